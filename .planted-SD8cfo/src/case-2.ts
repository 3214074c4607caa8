export const f = (value: any): number => Number(value);
