// Three shots whose mean is exactly nought and which lie one spread (1 SD per axis) apart; later ones in pairs round the middle.
export const ROUND: readonly (readonly [number, number])[] = [
  [-0.87, 0.5], [0.87, 0.5], [0, -1], [0, 0], [0.7, 0.7], [-0.7, -0.7], [0.7, -0.7], [-0.7, 0.7], [0, 0], [0.5, 0], [-0.5, 0],
];
