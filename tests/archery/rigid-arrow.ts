// A rigid arrow in flight, in one plane: the model that the figures of src/archery/launch.ts were derived with, written anew for the tests from
// its assumptions alone. They are typical of a hunting arrow, not measured on one. Slopes of lift after slender-body theory and
// J. S. Barrowman's fins (1967, from memory); across the shaft the drag of a cylinder. Drag of about 2 on the shaft's section was
// measured on smaller arrows (Proceedings 2020, 49(1), 56: 1.56 to 2.05, read).

const INCH = 0.0254;
const FOOT = 0.3048;

const LENGTH = 28.5 * INCH;
const DIAMETER = 0.246 * INCH;
const MASS = 395.1 * 64.79891e-6;
const INERTIA = 1.65e-3;
/** Centre of gravity behind the tip (FOC 11.1 %). */
const TO_TIP = 11.09 * INCH;
const TO_NOCK = LENGTH - TO_TIP;
const AIR = 1.2;
const GRAVITY = 9.80665;
const ACROSS = 1.1;
const STRIPS = 12;

/** Slope of lift by radian on the shaft's section, and place behind the tip (in). */
const NOSE = [2, 0.35] as const;
const VANES = [21.3, 26.1] as const;
const BLADES = [14.3, 0.8] as const;

export interface Shot {
  /** Degrees and rad/s of the nose, right or up above 0. */
  readonly angle?: number;
  readonly rate?: number;
  readonly fps?: number;
  readonly gravity?: boolean;
  readonly broadhead?: boolean;
}

/** Along and across (m), speeds along and across (m/s), the nose's turn (rad) and its rate (rad/s). */
type Motion = readonly number[];

/** Seconds between steps (fourth-order Runge-Kutta). */
const STEP = 1e-3;

/** At `feet` from where the point is when the arrow leaves the string: where the point goes through (in), and the tear (in), tail less point. */
export function fly({ angle = 0, rate = 0, fps = 280, gravity = false, broadhead = false }: Shot, feet: number): { readonly point: number; readonly tear: number } {
  const section = (Math.PI * DIAMETER ** 2) / 4;
  const surfaces = [NOSE, VANES, ...(broadhead ? [BLADES] : [])].map(([slope, behind]) => ({ slope, arm: behind * INCH - TO_TIP }));
  const strips = Array.from({ length: STRIPS }, (_, i) => ((i + 0.5) * LENGTH) / STRIPS - TO_TIP);
  const change = ([, , u = NaN, v = NaN, turn = NaN, turning = NaN]: Motion): Motion => {
    const speed = Math.hypot(u, v);
    const pressure = (AIR * speed ** 2) / 2;
    const incidence = turn - v / u;
    let [force, moment] = [0, 0];
    const add = (push: number, arm: number): void => {
      force += push;
      moment -= push * arm;
    };
    for (const { slope, arm } of surfaces) add(pressure * section * slope * (incidence + (turning * arm) / speed), arm);
    for (const arm of strips) {
      const local = incidence + (turning * arm) / speed;
      add(pressure * DIAMETER * (LENGTH / STRIPS) * ACROSS * Math.abs(local) * local, arm);
    }
    const drag = pressure * section * (broadhead ? 2.9 : 2.2);
    return [u, v, -drag / MASS, (force - drag * turn) / MASS - (gravity ? GRAVITY : 0), turning, moment / INERTIA];
  };
  const after = (now: Motion, by: Motion, time: number): Motion => now.map((value, i) => value + time * by[i]!);
  const step = (now: Motion, time: number): Motion => {
    const k1 = change(now);
    const k2 = change(after(now, k1, time / 2));
    const k3 = change(after(now, k2, time / 2));
    const k4 = change(after(now, k3, time));
    return after(now, k1.map((value, i) => (value + 2 * k2[i]! + 2 * k3[i]! + k4[i]!) / 6), time);
  };
  const until = (start: Motion, x: number): Motion => {
    let now = start;
    while (x - now[0]! > 1e-9) now = step(now, Math.min(STEP, (x - now[0]!) / now[2]!));
    return now;
  };
  const atPoint = until([-TO_TIP, 0, fps * FOOT, 0, (angle * Math.PI) / 180, rate], feet * FOOT - TO_TIP);
  const point = atPoint[1]! + TO_TIP * atPoint[4]!;
  const atNock = until(atPoint, feet * FOOT + TO_NOCK);
  return { point: point / INCH, tear: (atNock[1]! - TO_NOCK * atNock[4]! - point) / INCH };
}
