export const first = (list: readonly number[]): number => list[0];
