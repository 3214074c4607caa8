export function g(): { readonly a: number } { return JSON.parse('{}'); }
