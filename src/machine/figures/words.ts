// Figures for the card as they are told: no closer than they were measured.

import type { Inches } from '../../maths/units.ts';

/** `12.6`: a share that hangs on a tape. */
export const toTenth = (value: number): string => value.toFixed(1);
/** Feet a second, pounds, grains: as a scale shows them. */
export const toWhole = (value: number): string => String(Math.round(value));
/** `.340`, as it is printed. */
export const asSpine = (sags: Inches): string => sags.toFixed(3).replace(/^0/, '');
/** `60` or `58.5`. */
export const asRead = (value: number): string => String(Number(value.toFixed(1)));
