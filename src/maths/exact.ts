// The exact definitions that forces, energies and stiffnesses are worked out from, in SI units. Everything else is derived from these
// four numbers, so that no rounded constant is typed twice.
// Source: NIST SP 811, appendix B.8; standard gravity as fixed by the 3rd CGPM.

/** Metres in a foot, and in an inch. */
export const FOOT = 0.3048;
export const INCH = 0.0254;
/** Kilograms in a pound, and in a grain (7000 to the pound). */
export const POUND = 0.45359237;
export const GRAIN = POUND / 7000;
/** Standard gravity, m/s2. */
export const GRAVITY = 9.80665;
/** Newtons in a pound of force; joules in a foot pound. */
export const POUND_FORCE = POUND * GRAVITY;
export const FOOT_POUND = FOOT * POUND_FORCE;
