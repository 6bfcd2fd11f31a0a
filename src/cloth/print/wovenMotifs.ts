// Prints and weaves that run in lines: stripe, gingham, check, crosshatch, waves, scales.
import type { Point } from '../../geometry/point';
import { bar, dot, type Inks, line, type Motif } from './motif';
import type { Generator } from './scatter';
import { byTone, type PrintShape, type Tone } from './shape';

/** How far what runs on from tile to tile is drawn past the edge, so that no hairline shows there. */
const SPARE = 0.02;

/** Stripes across the strip, of several breadths, each with its own fine companion lines. */
export function stripe(inks: Inks, generator: Generator): Motif {
  const height = 0.5;
  const parts: { breadth: number; tone: Tone | null }[] = [];
  const stripes = 3 + generator.whole(2);
  for (let index = 0; index < stripes; index += 1) {
    const main = inks.tone(index % 2 === 0 ? 0 : 1);
    const fine = inks.tone(index % 2 === 0 ? 1 : 2);
    const gap = generator.between(0.5, 0.8);
    parts.push({ breadth: generator.between(1.1, 1.7), tone: null });
    parts.push({ breadth: generator.between(0.14, 0.22), tone: fine });
    parts.push({ breadth: gap * 0.5, tone: null });
    parts.push({ breadth: generator.between(0.6, index === 0 ? 1.7 : 1.1), tone: main });
    parts.push({ breadth: gap * 0.5, tone: null });
    parts.push({ breadth: generator.between(0.14, 0.22), tone: fine });
  }
  const whole = parts.reduce((sum, part) => sum + part.breadth, 0);
  const shapes: PrintShape[] = [];
  let at = 0;
  for (const part of parts) {
    const breadth = part.breadth / whole;
    if (part.tone) shapes.push(wavering(part.tone, at, breadth, height, generator));
    at += breadth;
  }
  return { height, shapes };
}

/** A stripe whose edges waver a little, as printed edges do. */
function wavering(tone: Tone, x: number, breadth: number, height: number, generator: Generator): PrintShape {
  const steps = 8;
  const swing = Math.min(0.002, breadth * 0.1);
  const edge = (left: number) => {
    const swings = Array.from({ length: steps }, () => generator.between(-swing, swing));
    return Array.from({ length: steps + 1 }, (_, step) => ({
      x: left + swings[step % (steps - 2)]!,
      y: ((step - 1) / (steps - 2)) * height,
    }));
  };
  return {
    kind: 'area',
    tone,
    soft: false,
    outline: [...edge(x), ...edge(x + breadth).toReversed()],
  };
}

const GINGHAM_PAIRS = 4;

/** Woven gingham: half-tone stripes both ways, full colour where they cross, single threads a little off. */
export function gingham(inks: Inks, generator: Generator): Motif {
  const check = 1 / (2 * GINGHAM_PAIRS);
  const half = inks.mixed(inks.tone(0), inks.ground, 0.5);
  const shapes: PrintShape[] = [];
  const starts = Array.from({ length: GINGHAM_PAIRS }, (_, pair) => (2 * pair + 0.5) * check);
  const long = 1 + 2 * SPARE;
  for (const start of starts) shapes.push(bar(half, start, -SPARE, check, long));
  for (const start of starts) shapes.push(bar(half, -SPARE, start, long, check));
  for (const x of starts) for (const y of starts) shapes.push(bar(inks.tone(0), x, y, check, check));
  const pale = inks.mixed(inks.tone(0), inks.ground, 0.3);
  const deep = inks.mixed(inks.tone(0), inks.ground, 0.72);
  for (const [tone, count] of [
    [pale, 9],
    [deep, 7],
  ] as const) {
    // biome-ignore format: a table
    for (let thread = 0; thread < count; thread += 1) {
      const along = starts[generator.whole(GINGHAM_PAIRS)]! + generator.between(0.06, 0.9) * check;
      const across = starts[generator.whole(GINGHAM_PAIRS)]! + check * 1.02;
      const thin = 0.007;
      if (thread % 2 === 0) shapes.push(bar(tone, along, across, thin, check * 0.96));
      else shapes.push(bar(tone, across, along, check * 0.96, thin));
    }
  }
  return { height: 1, shapes };
}

const CHECK_LINES = 3;

/** A window-pane check: fine lines of two colours in turn both ways, darker where they cross. */
export function check(inks: Inks, generator: Generator): Motif {
  const pane = 1 / (2 * CHECK_LINES);
  const lines = Array.from({ length: 2 * CHECK_LINES }, (_, index) => ({
    middle: (index + 0.5) * pane + generator.between(-0.004, 0.004),
    breadth: (index % 2 === 0 ? 0.036 : 0.016) * generator.between(0.9, 1.1),
    ink: index % 2,
  }));
  const woven = [0, 1].map((ink) => inks.mixed(inks.tone(ink), inks.ground, 0.62));
  const crossed = [0, 1, 2].map((seconds) => inks.mixed(inks.tone(1), inks.tone(0), seconds / 2));
  const bars = lines.flatMap((one) => {
    const start = one.middle - one.breadth / 2;
    const tone = woven[one.ink]!;
    return [
      bar(tone, start, -SPARE, one.breadth, 1 + 2 * SPARE),
      bar(tone, -SPARE, start, 1 + 2 * SPARE, one.breadth),
    ];
  });
  const crossings = lines.flatMap((across) =>
    lines.map((down) => {
      const left = across.middle - across.breadth / 2;
      const tone = crossed[across.ink + down.ink]!;
      return bar(tone, left, down.middle - down.breadth / 2, across.breadth, down.breadth);
    }),
  );
  return { height: 1, shapes: [...byTone(bars), ...byTone(crossings)] };
}

/** Brushed lines both ways, each with its own length, breadth and lean: a quiet cloth that reads as one colour. */
export function crosshatch(inks: Inks, generator: Generator): Motif {
  const shapes: PrintShape[] = [];
  const rows = 21;
  for (let layer = 0; layer < 4; layer += 1) {
    const tone = layer < 2 ? inks.mixed(inks.tone(1), inks.ground, 0.7) : inks.tone(0);
    const breadths = layer < 2 ? [0.009, 0.013, 0.016] : [0.006, 0.009, 0.011];
    const strokes: PrintShape[] = [];
    for (let row = 0; row < rows; row += 1) {
      const across = (row + generator.between(0.1, 0.9)) / rows;
      const start = generator.between(0, 1);
      const length = generator.between(0.18, 0.7);
      const lean = generator.between(-0.012, 0.012);
      const points = [
        { x: start, y: across },
        { x: start + length / 2, y: across + lean },
        { x: start + length, y: across + lean / 3 },
      ];
      const turned = layer % 2 === 0 ? points : points.map((point) => ({ x: point.y, y: point.x }));
      strokes.push(line(tone, turned, breadths[generator.whole(3)]!));
    }
    shapes.push(...byTone(strokes));
  }
  return { height: 1, shapes };
}

/** Lines of water along the strip: each swells and thins, in two colours. */
export function waves(inks: Inks, generator: Generator): Motif {
  const height = 0.75;
  const rows = 9;
  const steps = 24;
  const shapes: PrintShape[] = [];
  for (let row = 0; row < rows; row += 1) {
    const middle = ((row + 0.5) / rows) * height;
    const shift = generator.between(0, 1) * 0.25 + (row % 2) * 0.5;
    const swing = generator.between(0.014, 0.019);
    const swell = generator.between(0, 1);
    const breadth = generator.between(0.013, 0.021) * (row % 3 === 1 ? 0.7 : 1);
    const turn = (x: number) => 2 * Math.PI * (3 * x + shift);
    const middleAt = (x: number) => middle + swing * Math.sin(turn(x));
    const halfAt = (x: number) => (breadth / 2) * (1.25 + 0.75 * Math.sin(2 * Math.PI * (x + swell)));
    const xs = Array.from({ length: steps + 5 }, (_, step) => (step - 2) / steps);
    shapes.push({
      kind: 'area',
      tone: inks.tone(row % 3 === 1 ? 1 : 0),
      soft: true,
      outline: [
        ...xs.map((x) => ({ x, y: middleAt(x) - halfAt(x) })),
        ...xs.toReversed().map((x) => ({ x, y: middleAt(x) + halfAt(x) })),
      ],
    });
  }
  return { height, shapes: byTone(shapes) };
}

/** Overlapping scales in rows set half a step on; some filled, all with finer arcs inside. */
export function scales(inks: Inks, generator: Generator): Motif {
  const across = 4;
  const radius = 1 / (2 * across);
  const rows = 8;
  const fills: PrintShape[] = [];
  const arcs: PrintShape[] = [];
  const fillTones = [0.4, 0.65].map((share) => inks.mixed(inks.tone(1), inks.ground, share));
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < across; column += 1) {
      const middle = { x: (2 * column + (row % 2)) * radius + radius / 2, y: (row + 0.5) * radius };
      if (generator.between(0, 1) < 0.34) fills.push(scale(fillTones[generator.whole(2)]!, middle, radius));
      const loose = radius * generator.between(0.98, 1.03);
      arcs.push(line(inks.tone(0), arc(middle, loose), 0.0125, false));
      arcs.push(line(inks.tone(0), arc(middle, 0.66 * loose), 0.0075, false));
      arcs.push(line(inks.tone(1), arc(middle, 0.34 * loose), 0.0075, false));
      arcs.push(dot(inks.tone(0), { x: middle.x, y: middle.y - radius * 0.08 }, radius * 0.09));
    }
  }
  return { height: rows * radius, shapes: [...byTone(fills), ...byTone(arcs)] };
}

const ARC_STEPS = 10;

/** Points of the upper half circle from left to right. */
function arc(middle: Point, radius: number): Point[] {
  return Array.from({ length: ARC_STEPS + 1 }, (_, step) => {
    const angle = Math.PI * (1 + step / ARC_STEPS);
    return { x: middle.x + radius * Math.cos(angle), y: middle.y + radius * Math.sin(angle) };
  });
}

/** What of a scale shows: the half circle above, drawn in to a point between its two lower neighbours. */
function scale(tone: Tone, middle: Point, radius: number): PrintShape {
  const lowerRight = arc({ x: middle.x + radius, y: middle.y + radius }, radius).slice(0, ARC_STEPS / 2 + 1);
  const lowerLeft = arc({ x: middle.x - radius, y: middle.y + radius }, radius).slice(ARC_STEPS / 2);
  return {
    kind: 'area',
    tone,
    soft: false,
    outline: [...arc(middle, radius), ...lowerRight.toReversed(), ...lowerLeft.toReversed()],
  };
}
