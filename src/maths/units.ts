// Units as brands: a bare number never says what it measures, so functions that care take and give these.
// Exact definitions: NIST SP 811, appendix B.8.

declare const unitOf: unique symbol;
/** A number that carries its unit in its type. */
export type Measured<U extends string> = number & { readonly [unitOf]: U };

export type Inches = Measured<'in'>;
export type Feet = Measured<'ft'>;
export type Yards = Measured<'yd'>;
export type Pounds = Measured<'lb'>;
export type Grains = Measured<'gr'>;
export type Turns = Measured<'turn'>;
/** Milliradians: an angle, as impacts at several distances are compared. No unit that anybody answers in. */
export type Mrad = Measured<'mrad'>;
/** Feet a second, as a chronograph tells arrow speed. */
export type Fps = Measured<'fps'>;
/** What a shaft weighs along its length. */
export type GrainsPerInch = Measured<'gr/in'>;
export type FootPounds = Measured<'ft lbf'>;
/** Angles of an arrow that leaves the bow, and how fast they change. */
export type Degrees = Measured<'deg'>;
export type RadiansPerSecond = Measured<'rad/s'>;
export type Percent = Measured<'percent'>;

/** A number in a unit: from here on its type says so. The only way to make one. */
// Example: inUnit(2, 'in') is 2.
// oxlint-disable-next-line typescript/consistent-type-assertions -- a brand is put on a number here and nowhere else
export const inUnit = <U extends string>(n: number, _unit: U): Measured<U> => n as Measured<U>;
export const inches = (n: number): Inches => inUnit(n, 'in');
export const feet = (n: number): Feet => inUnit(n, 'ft');
export const yards = (n: number): Yards => inUnit(n, 'yd');
export const pounds = (n: number): Pounds => inUnit(n, 'lb');
export const grains = (n: number): Grains => inUnit(n, 'gr');
export const turns = (n: number): Turns => inUnit(n, 'turn');
export const mrad = (n: number): Mrad => inUnit(n, 'mrad');
export const fps = (n: number): Fps => inUnit(n, 'fps');
export const grainsPerInch = (n: number): GrainsPerInch => inUnit(n, 'gr/in');
export const footPounds = (n: number): FootPounds => inUnit(n, 'ft lbf');
export const degrees = (n: number): Degrees => inUnit(n, 'deg');
export const radiansPerSecond = (n: number): RadiansPerSecond => inUnit(n, 'rad/s');
export const percent = (n: number): Percent => inUnit(n, 'percent');

/** Every unit that an answer, an adjustment or the pipe may carry. A closed list, printed with the schema. */
export const UNITS = [
  'in', 'mm', 'cm', 'ft', 'yd', 'm',
  'lb', 'kg', 'gr', 'g', 'gr/in',
  'turn', 'half-twist', 'half-twist-pair', 'size', 'click',
  'count', 'shots', 'months', 'percent', 'fps',
] as const;
export type Unit = (typeof UNITS)[number];

/** Yards as feet: 1 yd is 3 ft. */
// Example: feetIn(yards(20)) is 60.
export const feetIn = (length: Yards): Feet => feet(length * 3);
/** Feet as yards. */
// Example: yardsIn(feet(60)) is 20.
export const yardsIn = (length: Feet): Yards => yards(length / 3);
