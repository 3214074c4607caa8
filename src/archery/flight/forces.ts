// What pushes and turns an arrow, and so how its motion changes: a rigid body at small slants, in SI units.
// Every piece of it meets the air at a slant of its own, for the arrow turns while it flies. Nose and fins push as that slant, the shaft as its
// square (the drag of a cylinder across the air). The two axes share the speed and the slant, otherwise each goes by itself: an arrow
// does not roll here, and fins are taken as even all round.

import type { Body } from './body.ts';
import type { World } from './world.ts';

/** On one axis, right or up above 0: the balance point's place (m) and speed (m/s), the nose's turn (rad) and how fast it turns (rad/s). */
export interface Across { readonly at: number; readonly speed: number; readonly turn: number; readonly turning: number }

/** Place and speed of the balance point downrange (m, m/s), and its motion across. */
export interface Motion { readonly x: number; readonly speed: number; readonly side: Across; readonly height: Across }

/** How fast each figure of a motion changes, by s. */
// Example: changeOf({ mass: 1, inertia: 1, strips: [] }, { density: 0, gravity: 9 })({ speed: 2, side: { speed: 3 }, height: {} }).side.at is 3.
export function changeOf(body: Body, { density, gravity, crossFlow }: World): (now: Motion) => Motion {
  const { slope, lever, damping } = body;
  const shaft = crossFlow * body.diameter * body.strip;
  return ({ speed, side, height }) => {
    const total = Math.sqrt(speed ** 2 + side.speed ** 2 + height.speed ** 2);
    const pressure = (density * total ** 2) / 2;
    const lift = pressure * body.section;
    const drag = lift * body.drag;
    const sideSlant = side.turn - side.speed / speed;
    const heightSlant = height.turn - height.speed / speed;
    const sideSwirl = side.turning / total;
    const heightSwirl = height.turning / total;
    let sidePush = lift * (slope * sideSlant + lever * sideSwirl);
    let sideMoment = lift * (lever * sideSlant + damping * sideSwirl);
    let heightPush = lift * (slope * heightSlant + lever * heightSwirl);
    let heightMoment = lift * (lever * heightSlant + damping * heightSwirl);
    for (const at of body.strips) {
      const sideHere = sideSlant + sideSwirl * at;
      const heightHere = heightSlant + heightSwirl * at;
      const braked = pressure * shaft * Math.sqrt(sideHere ** 2 + heightHere ** 2);
      sidePush += braked * sideHere;
      sideMoment += braked * sideHere * at;
      heightPush += braked * heightHere;
      heightMoment += braked * heightHere * at;
    }
    return {
      x: speed,
      speed: -drag / body.mass,
      side: { at: side.speed, speed: (sidePush - drag * side.turn) / body.mass, turn: side.turning, turning: -sideMoment / body.inertia },
      height: { at: height.speed, speed: (heightPush - drag * height.turn) / body.mass - gravity, turn: height.turning, turning: -heightMoment / body.inertia },
    };
  };
}
