export const x: number = 'a';
