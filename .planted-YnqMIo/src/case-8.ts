declare const list: readonly number[]; export const x = list[0]!;
