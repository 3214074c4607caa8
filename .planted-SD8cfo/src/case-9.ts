type Face = 'screen' | 'plain' | 'pipe'; declare const face: Face; declare function f(): void; switch (face) { case 'screen': f(); break; case 'plain': f(); break; } export const done = 1;
