// The whole screen: what is finished above, what is to be done now below.

import { Box } from 'ink';
import { Component, type ReactElement, type ReactNode, useSyncExternalStore } from 'react';
import { liveLines } from './live.ts';
import type { ScreenStore } from './screen-store.ts';
import { Rows, Transcript } from './transcript.tsx';

const Screen = ({ store }: { readonly store: ScreenStore }): ReactElement => {
  const state = useSyncExternalStore(store.subscribe, store.getState);
  return (
    <Box flexDirection="column">
      <Transcript items={state.items} />
      <Rows lines={liveLines(state, store.needs)} />
    </Box>
  );
};

interface BoundaryProps { readonly onMistake: (error: unknown) => void; readonly children: ReactNode }

/** A mistake while drawing ends the screen in one plain line, which run.tsx writes; never in a stack. */
class Boundary extends Component<BoundaryProps, { readonly failed: boolean }> {
  override state = { failed: false };
  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }
  override componentDidCatch(error: unknown): void {
    this.props.onMistake(error);
  }
  override render(): ReactNode {
    return this.state.failed ? null : this.props.children;
  }
}

export const App = ({ store, onMistake }: { readonly store: ScreenStore; readonly onMistake: (error: unknown) => void }): ReactElement => (
  <Boundary onMistake={onMistake}><Screen store={store} /></Boundary>
);
