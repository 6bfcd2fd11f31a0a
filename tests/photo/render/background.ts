// What lies under and round the cloth: a table, a mat with a grid, a bed of other fabrics.
import { linearOf } from '../../../src/colour/spaces';
import type { Dice } from './dice';

/** Linear light of the ground at a point of the table, inches. */
export type Ground = (x: number, y: number, into: Float32Array) => void;

type Colour = readonly [number, number, number];

function anyColour(dice: Dice, least = 0.05, most = 0.95): Colour {
  const value = dice.between(least, most);
  const part = () => Math.max(0, Math.min(1, value + dice.between(-0.22, 0.22)));
  return linearOf([part(), part(), part()]) as unknown as Colour;
}

/** Smooth noise of two directions, about −1 to 1. */
function waves(dice: Dice, scale: number): (x: number, y: number) => number {
  const parts = Array.from({ length: 5 }, () => ({
    a: dice.normal() * scale,
    b: dice.normal() * scale,
    phase: dice.between(0, 6.28),
  }));
  return (x, y) => parts.reduce((sum, { a, b, phase }) => sum + Math.sin(a * x + b * y + phase), 0) / 3;
}

function table(dice: Dice): Ground {
  const colour = anyColour(dice);
  const [turn, rough] = [dice.between(0, 3.14), dice.between(0.02, 0.15)];
  const grain = waves(dice, 1.5);
  return (x, y, into) => {
    const along = x * Math.cos(turn) + y * Math.sin(turn);
    const across = y * Math.cos(turn) - x * Math.sin(turn);
    const by = 1 + rough * grain(along * 0.15, across * 3);
    for (let channel = 0; channel < 3; channel += 1) into[channel] = colour[channel]! * by;
  };
}

function mat(dice: Dice): Ground {
  const colour = anyColour(dice, 0.1, 0.7);
  const line = anyColour(dice, 0.4, 1);
  const turn = dice.chance(0.5) ? dice.between(-0.05, 0.05) : dice.between(-0.7, 0.7);
  const wide = dice.between(0.02, 0.06);
  return (x, y, into) => {
    const u = x * Math.cos(turn) + y * Math.sin(turn);
    const v = y * Math.cos(turn) - x * Math.sin(turn);
    const on = (w: number) => Math.abs(w - Math.round(w)) < wide / 2;
    const source = on(u) || on(v) ? line : colour;
    for (let channel = 0; channel < 3; channel += 1) into[channel] = source[channel]!;
  };
}

function patches(under: Ground, dice: Dice): Ground {
  const pieces = Array.from({ length: 2 + dice.below(8) }, () => {
    const [one, other] = [anyColour(dice), anyColour(dice)];
    const turn = dice.between(0, 3.14);
    return {
      x: dice.between(-18, 18),
      y: dice.between(-18, 18),
      cos: Math.cos(turn),
      sin: Math.sin(turn),
      w: dice.between(1, 9),
      h: dice.between(1, 9),
      one,
      other,
      repeat: dice.between(0.2, 1.5),
      share: dice.between(0, 0.5),
    };
  });
  return (x, y, into) => {
    under(x, y, into);
    for (const piece of pieces) {
      const u = (x - piece.x) * piece.cos + (y - piece.y) * piece.sin;
      const v = (y - piece.y) * piece.cos - (x - piece.x) * piece.sin;
      if (Math.abs(u) > piece.w / 2 || Math.abs(v) > piece.h / 2) continue;
      const figure =
        (((u / piece.repeat) % 1) + 1) % 1 < piece.share && (((v / piece.repeat) % 1) + 1) % 1 < 0.6;
      const source = figure ? piece.other : piece.one;
      for (let channel = 0; channel < 3; channel += 1) into[channel] = source[channel]!;
    }
  };
}

/** A ground for cloth about `size` inches across: figures are as large beside it as beside a block. */
export function randomGround(dice: Dice, size: number): Ground {
  const under = dice.chance(0.5) ? table(dice) : mat(dice);
  const ground = dice.chance(0.6) ? patches(under, dice) : under;
  const by = 15 / size;
  return (x, y, into) => ground(x * by, y * by, into);
}
