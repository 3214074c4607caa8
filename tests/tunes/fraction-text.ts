// A length as an archer writes it, in 64ths: for the names of decisions in tests.

export function toFractionText(value: number): string {
  const parts = Math.round(value * 64);
  if (parts % 64 === 0) return String(parts / 64);
  let [top, bottom] = [parts, 64];
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return `${top}/${bottom}`;
}
