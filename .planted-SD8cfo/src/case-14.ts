export const d = ['a'] as const;
