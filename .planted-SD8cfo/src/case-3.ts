export const x = JSON.parse('{}');
