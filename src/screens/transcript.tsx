// Finished lines: each goes through <Static> once and then belongs to the terminal's scroll-back.

import { Box, Static, Text } from 'ink';
import type { ReactElement } from 'react';
import { type Line, lineText, type Span, type Tone } from './look.ts';
import type { Item } from './state.ts';

const LOOKS: Readonly<Record<Tone, { readonly bold?: boolean; readonly dimColor?: boolean; readonly color?: string }>> = {
  plain: {}, strong: { bold: true }, soft: { dimColor: true }, coach: { color: 'cyan' }, warn: { bold: true, color: 'yellow' },
};

const Part = ({ part }: { readonly part: Span }): ReactElement => <Text {...LOOKS[part.tone]}>{part.text}</Text>;

/** One line as it is; it was wrapped before, and is cut rather than wrapped again should a terminal count otherwise. */
export const Row = ({ line }: { readonly line: Line }): ReactElement =>
  lineText(line) === '' ? <Text> </Text> : <Text wrap="truncate-end">{line.map((part, at) => <Part key={at} part={part} />)}</Text>;

export const Rows = ({ lines }: { readonly lines: readonly Line[] }): ReactElement => (
  <Box flexDirection="column">{lines.map((line, at) => <Row key={at} line={line} />)}</Box>
);

/** Always mounted: to take it away would let go of memory that Ink still uses. */
export const Transcript = ({ items }: { readonly items: readonly Item[] }): ReactElement => (
  <Static items={[...items]}>{(item) => <Rows key={item.id} lines={item.lines} />}</Static>
);
