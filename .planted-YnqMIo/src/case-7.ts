export const x: unknown = JSON.parse('{}');
