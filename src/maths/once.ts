// What follows from values that never change is worked out once for each of them, and kept as long as they live. State, content,
// snapshots and lists of bows are such values: nothing writes into them, a change makes a new one. Nothing else may be a key here.

/** The same function, which works out each key once. */
// Example: once((shots) => ({ count: shots.length }))(['high', 'left']).count is 2.
export function once<K extends object, V extends object | string | null>(make: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, V>();
  return (key) => {
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = make(key);
    known.set(key, made);
    return made;
  };
}

/** The same for what follows from two values together. */
// Example: onceForBoth((a, b) => ({ count: a.length + b.length }))(['high', 'left'], ['low']).count is 3.
export function onceForBoth<A extends object, B extends object, V extends object | string | null>(make: (a: A, b: B) => V): (a: A, b: B) => V {
  const withA = once((a: A) => once((b: B) => make(a, b)));
  return (a, b) => withA(a)(b);
}
