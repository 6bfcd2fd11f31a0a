// Prints of single figures: dots in rows, and sprigs, leaves, small flowers, specks and stars tossed over the cloth.
import type { Point } from '../../geometry/point';
import { away, dot, type Inks, leaf, line, type Motif } from './motif';
import { type Generator, scattered } from './scatter';
import { byTone, type PrintShape, type Tone } from './shape';

const DOT_ROWS = 6;

/** Dots in rows set half a step on, none quite round, with pin dots between. */
export function dots(inks: Inks, generator: Generator): Motif {
  const pitch = 1 / DOT_ROWS;
  const shapes: PrintShape[] = [];
  const pins: PrintShape[] = [];
  for (let row = 0; row < DOT_ROWS; row += 1) {
    for (let column = 0; column < DOT_ROWS; column += 1) {
      const x = (column + 0.25 + (row % 2) / 2) * pitch;
      const y = (row + 0.5) * pitch;
      const at = {
        x: x + generator.between(-0.05, 0.05) * pitch,
        y: y + generator.between(-0.05, 0.05) * pitch,
      };
      const radius = pitch * generator.between(0.25, 0.29);
      shapes.push(
        dot(inks.tone(0), at, radius, radius * generator.between(0.92, 1.05), generator.between(0, 180)),
      );
      pins.push(dot(inks.tone(1), { x: x + pitch / 2, y }, pitch * generator.between(0.055, 0.075)));
    }
  }
  return { height: 1, shapes: [...shapes, ...pins] };
}

/** Sprigs: a bent stem with leaves in pairs and a head of small petals. */
export function sprig(inks: Inks, generator: Generator): Motif {
  const stems: PrintShape[] = [];
  const leaves: PrintShape[] = [];
  const petals: PrintShape[] = [];
  const hearts: PrintShape[] = [];
  const green = inks.tone(1);
  for (const at of scattered(12, generator)) {
    const turn = generator.between(0, 360);
    const length = generator.between(0.19, 0.24);
    const bend = generator.between(-26, 26);
    const foot = away(at, turn + 180, length * 0.55);
    const middle = away(foot, turn + bend / 2, length / 2);
    const head = away(middle, turn - bend / 2, length / 2);
    stems.push(line(green, [foot, away(foot, turn + bend, length * 0.4), middle, head], 0.0095));
    for (const [along, side] of [
      [0.25, 1],
      [0.4, -1],
      [0.62, 1],
      [0.74, -1],
    ] as const) {
      const node = along < 0.5 ? mid(foot, middle, along * 2) : mid(middle, head, along * 2 - 1);
      const size = (0.075 - 0.03 * along) * generator.between(0.85, 1.15);
      leaves.push(leaf(green, node, turn + side * generator.between(42, 58), size, size * 0.5));
    }
    const petal = generator.between(0.016, 0.02);
    for (let index = 0; index < 5; index += 1) {
      const toward = turn + index * 72 + generator.between(-6, 6);
      petals.push(dot(inks.tone(0), away(head, toward, petal * 1.05), petal * 0.95, petal * 0.72, toward));
    }
    hearts.push(dot(inks.tone(2), head, petal * 0.5));
  }
  return { height: 1, shapes: [...stems, ...leaves, ...petals, ...hearts] };
}

function mid(from: Point, to: Point, share: number): Point {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

/** Tossed leaves in two tones, each with a midrib. */
export function leaves(inks: Inks, generator: Generator): Motif {
  const pale: PrintShape[] = [];
  const strong: PrintShape[] = [];
  const ribs: PrintShape[] = [];
  scattered(23, generator).forEach((at, index) => {
    const turn = generator.between(0, 360);
    const length = generator.between(0.15, 0.215);
    const foot = away(at, turn + 180, length / 2);
    const isPale = index % 3 === 2;
    const tone = isPale ? inks.tone(1) : inks.tone(0);
    (isPale ? pale : strong).push(leaf(tone, foot, turn, length, length * generator.between(0.4, 0.5)));
    ribs.push(line(inks.ground, [away(foot, turn, length * 0.1), away(foot, turn, length * 0.82)], 0.006));
    ribs.push(line(tone, [away(foot, turn + 180, length * 0.16), away(foot, turn, length * 0.08)], 0.009));
  });
  return { height: 1, shapes: [...pale, ...strong, ...byTone(ribs)] };
}

/** Small flowers close together, with single leaves and pin dots between. */
export function ditsy(inks: Inks, generator: Generator): Motif {
  const petals: PrintShape[] = [];
  const hearts: PrintShape[] = [];
  const green: PrintShape[] = [];
  scattered(48, generator).forEach((at, index) => {
    const turn = generator.between(0, 360);
    if (index < 21) {
      const petal = generator.between(0.023, 0.031);
      const count = 5;
      const tone = index % 3 === 1 ? inks.tone(1) : inks.tone(0);
      for (let one = 0; one < count; one += 1) {
        const toward = turn + (one * 360) / count + generator.between(-7, 7);
        petals.push(dot(tone, away(at, toward, petal * 0.98), petal * 0.9, petal * 0.66, toward));
      }
      hearts.push(dot(index % 3 === 1 ? inks.tone(0) : inks.tone(1), at, petal * 0.44));
    } else if (index < 37) {
      const size = generator.between(0.048, 0.064);
      green.push(leaf(inks.tone(2), at, turn, size, size * 0.5));
      green.push(leaf(inks.tone(2), at, turn + generator.between(65, 95), size * 0.8, size * 0.4));
    } else {
      hearts.push(dot(inks.tone(0), at, generator.between(0.006, 0.009)));
    }
  });
  return { height: 1, shapes: [...green, ...byTone(petals), ...byTone(hearts)] };
}

/** Specks of many sizes, as flicked from a brush. */
export function speckle(inks: Inks, generator: Generator): Motif {
  const byInk: PrintShape[][] = [[], [], []];
  scattered(150, generator).forEach((at, index) => {
    const ink = index % 4 === 1 ? 1 : index % 7 === 2 ? 2 : 0;
    const radius = 0.007 + 0.021 * generator.between(0, 1) ** 3.2;
    byInk[ink]!.push(
      dot(inks.tone(ink), at, radius, radius * generator.between(0.7, 1), generator.between(0, 180)),
    );
  });
  return { height: 1, shapes: byInk.toReversed().flat() };
}

/** Stars with four, five and eight points, large and small, with pin dots between. */
export function stars(inks: Inks, generator: Generator): Motif {
  const small: PrintShape[] = [];
  const large: PrintShape[] = [];
  scattered(38, generator).forEach((at, index) => {
    if (index < 11) large.push(star(inks.tone(0), at, generator.between(0.052, 0.066), 5, 0.44, generator));
    else if (index < 23)
      small.push(star(inks.tone(1), at, generator.between(0.03, 0.042), 4, 0.3, generator));
    else small.push(dot(inks.tone(0), at, generator.between(0.006, 0.0095)));
  });
  return { height: 1, shapes: [...byTone(small), ...large] };
}

function star(
  tone: Tone,
  at: Point,
  reach: number,
  points: number,
  waist: number,
  generator: Generator,
): PrintShape {
  const turn = generator.between(0, 360);
  return {
    kind: 'area',
    tone,
    soft: false,
    outline: Array.from({ length: 2 * points }, (_, corner) => {
      const length = corner % 2 === 0 ? reach * generator.between(0.93, 1.05) : reach * waist;
      return away(at, turn + (corner * 180) / points, length);
    }),
  };
}
