// Writing to a stream that may be slow or may go away. A reader that left (EPIPE) is no error: there is no one left to tell.

import type { Writable } from 'node:stream';

export interface Output {
  /** Resolves when the text is handed on; quietly does nothing once the reader has left. */
  write(text: string): Promise<void>;
  readonly closed: () => boolean;
}

export function outputTo(stream: Writable): Output {
  let closed = false;
  const leave = (): void => { closed = true; };
  stream.on('error', leave);
  stream.on('close', leave);
  return {
    closed: () => closed,
    write: (text) => new Promise((resolve) => {
      if (closed || text === '') return resolve();
      stream.once('close', resolve);
      stream.write(text, (error) => {
        if (error) leave();
        stream.off('close', resolve);
        resolve();
      });
    }),
  };
}
