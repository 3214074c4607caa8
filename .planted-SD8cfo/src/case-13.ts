declare const word: string; export const a = word as 'a';
