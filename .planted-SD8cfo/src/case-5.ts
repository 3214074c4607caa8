declare function take(a: number): void; take(JSON.parse('1')); export {};
