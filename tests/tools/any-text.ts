// Any text at all, any code point: made once, since the table behind it is long.

import fc from 'fast-check';

export const anyText = fc.string({ unit: 'binary' });
