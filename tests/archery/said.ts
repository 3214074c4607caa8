// What a function says when it refuses: the whole message, so that a test holds the name, the figure and what is needed.

/** The message of the RangeError; another error goes on, and no error is told as such. */
export function said(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
  return 'no error';
}
