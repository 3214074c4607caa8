// A real terminal of a given size to look at: tmux on a server of its own, so that nobody's own sessions are touched.

import { execFileSync } from 'node:child_process';

export interface Size { readonly columns: number; readonly rows: number }
export interface Shown {
  /** What stands on the screen now, line by line; a line that the terminal broke is joined again. */
  readonly screen: readonly string[];
  /** The same with everything that has scrolled away. */
  readonly all: readonly string[];
}

export const hasTmux = (): boolean => {
  try {
    execFileSync('tmux', ['-V'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

const pause = (ms: number): Promise<void> => new Promise((resolve) => { setTimeout(resolve, ms); });
const LONGEST_WAIT_MS = 6000;
const LOOK_EVERY_MS = 40;
/** Looks in a row that must be alike: after a key, and after a start or a resize, where the terminal itself moves lines first. */
const QUICKLY = 2;
export const SLOWLY = 10;

export class Terminal {
  /** `socket`: a file of the server's own, in a folder that goes away with it. */
  constructor(private readonly socket: string, { columns, rows }: Size, command: readonly string[], env: Readonly<Record<string, string>>) {
    const set = Object.entries(env).map(([key, value]) => `${key}=${value}`);
    this.tmux('-f', '/dev/null', 'new-session', '-d', '-s', 'look', '-x', String(columns), '-y', String(rows), '--', 'sh', '-c', 'sleep 600');
    this.tmux('set-option', '-g', 'history-limit', '5000');
    this.tmux('set-option', '-g', 'remain-on-exit', 'on');
    this.tmux('set-option', '-g', 'status', 'off');
    this.tmux('resize-window', '-t', 'look', '-x', String(columns), '-y', String(rows));
    // The limits above count only for panes that begin after them.
    this.tmux('respawn-pane', '-k', '-t', 'look', '--', 'env', '-i', ...set, ...command);
  }

  private tmux(...args: readonly string[]): string {
    return execFileSync('tmux', ['-u', '-S', this.socket, ...args], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
  }

  look(): Shown {
    const lines = (text: string): readonly string[] => text.replace(/\n$/, '').split('\n').map((line) => line.trimEnd());
    return { screen: lines(this.tmux('capture-pane', '-p', '-J', '-t', 'look')), all: lines(this.tmux('capture-pane', '-p', '-J', '-S', '-', '-t', 'look')) };
  }

  /** Sends keys (names as tmux knows them, or text) one after another. */
  press(keys: readonly string[]): void {
    for (const key of keys) {
      if (/^[A-Z][A-Za-z]+$/.test(key)) this.tmux('send-keys', '-t', 'look', key);
      else this.tmux('send-keys', '-t', 'look', '-l', key);
    }
  }

  resize({ columns, rows }: Size): void {
    this.tmux('resize-window', '-t', 'look', '-x', String(columns), '-y', String(rows));
  }

  /** Waits until the screen is not `before` any more and stands still for so many looks. Null: it never changed. */
  async settled(before: Shown | null, still = QUICKLY): Promise<Shown | null> {
    let last = '';
    let alike = 0;
    for (const end = Date.now() + LONGEST_WAIT_MS; Date.now() < end;) {
      await pause(LOOK_EVERY_MS);
      const now = this.look();
      const text = now.all.join('\n');
      const changed = before === null ? text.trim() !== '' : text !== before.all.join('\n') || now.screen.join('\n') !== before.screen.join('\n');
      alike = changed && text === last ? alike + 1 : 1;
      if (changed && alike >= still) return now;
      last = text;
    }
    return null;
  }

  close(): void {
    this.tmux('kill-server');
  }
}
