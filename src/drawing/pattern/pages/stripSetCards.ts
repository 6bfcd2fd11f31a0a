// Strip sets: each one's strips in sewing order, to one scale, with widths, fabrics, height and which way its seams are pressed.
import { growsWithUse } from '../../../cutting/wedges/ledger';
import { onRuler } from '../../../cutting/yardage/neededPiece';
import { heightShort, setHeight, stripPlaces } from '../../../geometry/stripSet';
import { counted, phrase } from '../../../model/phrase';
import type { StripSet } from '../../../model/project';
import { formatLength, type Inches } from '../../../model/units';
import { asTold } from '../../measures';
import type { Composer } from '../composer';
import { line, linesOf, shrunkTo, textFigure } from '../lettering';
import { HAIR, SEAM, STYLES } from '../look';
import { type Figure, type Mark, shifted, sideBySide, stacked } from '../page';
import { arrow, measure } from '../signs';
import { clothOf, nameOf, type Writing } from '../writing';

const COLUMNS = 2;
/** Tallest a set is drawn. */
const MOST_HIGH: Inches = 1.4;
const SLICE: Inches = 0.8;
/** Left of the slice: the height and the pressing arrow. */
const BESIDE: Inches = 0.56;
const LABEL_STEP: Inches = 0.15;
/** Where fabrics are named, from the strips' numbers. */
const NAME_AT: Inches = 0.58;
/** A name that takes more lines than this is set smaller. */
const MOST_LINES = 3;

export function stripSetPages(composer: Composer, writing: Writing): void {
  const { project, say } = writing;
  const sets = project.stripSets.filter((set) => set.strips.length > 0);
  if (sets.length === 0) return;
  composer.begin(say('Strip sets'), say('Sew the strips of a set side by side in the order shown, from strip 1 at the bottom. Sew every other seam from the opposite end, so that the set stays straight. Press as you go, and measure the height before you cut.')); // biome-ignore format: one sentence
  const tallest = Math.max(...sets.map((set) => setHeight(set.strips, project.wedge.seam)));
  const scale = Math.min(0.25, MOST_HIGH / tallest);
  const step = composer.width / COLUMNS;
  const cards = sets.map((set) => card(set, scale, step - 0.1, writing));
  for (let at = 0; at < cards.length; at += COLUMNS) {
    composer.add(sideBySide(cards.slice(at, at + COLUMNS), step), at === 0 ? 0.1 : 0.3);
  }
}

function card(set: StripSet, scale: number, width: Inches, writing: Writing): Figure {
  const { project, say, type } = writing;
  const height = setHeight(set.strips, project.wedge.seam);
  const facts = say(
    growsWithUse(set)
      ? counted(set.strips.length, '1 strip', '{count} strips')
      : counted(set.strips.length, '1 strip, {length} long', '{count} strips, {length} long', {
          length: { inches: set.length },
        }),
  );
  const short = heightShort(height, project.wedge);
  const parts = [
    textFigure(say('Set {set}', { set: set.label }), STYLES.card, width, type),
    textFigure(facts, STYLES.small, width, type),
    slice(set, height, scale, width, writing),
  ];
  const rounded = heightAsPrinted(set, writing);
  if (rounded !== null) {
    parts.push(textFigure(roundedWords(rounded, short > 0, writing), STYLES.small, width, type));
  }
  if (short > 0) {
    const say1 = phrase('This set is lower than the wedge: {more} is missing.', {
      more: { atLeast: short },
    });
    parts.push(textFigure(say(say1), STYLES.smallStrong, width, type));
  }
  return stacked(parts, 0.03);
}

/** The height of a set from strips cut as wide as the page says; null where it reads the same as the height drawn. */
function heightAsPrinted({ strips }: StripSet, { project }: Writing): Inches | null {
  const { unit } = project.preferences;
  const printed = (inches: Inches) => formatLength(inches, unit);
  const cut = strips.map(({ width }) => ({ width: asTold(width, unit) }));
  const height = setHeight(cut, project.wedge.seam);
  return printed(height) === printed(setHeight(strips, project.wedge.seam)) ? null : height;
}

/** What the rounding of the widths does to the height; how to make up for it where it alone makes the set too low. */
function roundedWords(height: Inches, lowAnyway: boolean, { project, say }: Writing): string {
  const words = say('Sewn from these rounded widths the set is {height} high.', {
    height: { inches: height },
  });
  const short = heightShort(height, project.wedge);
  if (lowAnyway || short === 0) return words;
  const more = { inches: onRuler(short, project.preferences.unit) };
  return `${words} ${say('That is too low for the wedge: cut strip 1 {more} wider.', { more })}`;
}

function slice(set: StripSet, height: Inches, scale: number, width: Inches, writing: Writing): Figure {
  const { project, say, type } = writing;
  const places = stripPlaces(set.strips, project.wedge.seam);
  const right = BESIDE + SLICE;
  const labelX = right + 0.17;
  const names = places.map(({ strip }) => {
    const name = nameOf(writing, set.strips[strip]!.fabric);
    const room = width - labelX - NAME_AT;
    const style = shrunkTo(MOST_LINES, name, STYLES.small, room, type);
    const lines = linesOf(name, style, room, type);
    return { lines, style, tall: LABEL_STEP + (lines.length - 1) * style.leading };
  });
  const tall = names.map((one) => one.tall);
  const middles = places.map(({ top, bottom }) => ((top + bottom) / 2) * scale);
  const labelAt = labelsApart(middles, tall);
  const high = Math.max(height * scale, ...labelAt.map((at, index) => at + tall[index]! / 2));
  // Labels may need more height than the strips; the slice then stands in the middle of them.
  const over = Math.max(0, ...labelAt.map((at, index) => tall[index]! / 2 - at));
  const marks: Mark[] = places.flatMap(({ strip, top, bottom }, index): Mark[] => {
    const cloth = set.strips[strip]!;
    const [y0, y1] = [top * scale, bottom * scale];
    const outline = [{ x: BESIDE, y: y0 }, { x: right, y: y0 }, { x: right, y: y1 }, { x: BESIDE, y: y1 }]; // biome-ignore format: a box
    const { lines, style } = names[index]!;
    const at = labelAt[index]! - (tall[index]! - LABEL_STEP) / 2;
    const baseline = at + STYLES.small.size * 0.34;
    return [
      { kind: 'shape', outlines: [outline], fill: clothOf(writing, cloth.fabric, scale, 0), stroke: SEAM },
      { kind: 'line', points: [{ x: right + 0.02, y: (y0 + y1) / 2 }, { x: labelX - 0.03, y: at }], stroke: HAIR },
      ...line(String(strip + 1), STYLES.label, labelX + 0.1, baseline, type, 'right'),
      ...line(say('{width}', { width: { inches: cloth.width } }), STYLES.smallStrong, labelX + 0.2, baseline, type),
      ...lines.flatMap((name, row) => line(name, style, labelX + NAME_AT, baseline + row * style.leading, type)),
    ]; // biome-ignore format: five marks
  });
  const bottom = height * scale;
  const [from, to] = set.pressing === 'first' ? [0.12, bottom - 0.12] : [bottom - 0.12, 0.12];
  marks.push(
    ...measure({ x: 0.2, y: 0 }, { x: 0.2, y: bottom }, say('{height}', { height: { inches: height } }), STYLES.labelStrong, type),
    ...arrow({ x: 0.43, y: from }, { x: 0.43, y: to }),
  ); // biome-ignore format: two signs
  return { width, height: high + over + 0.02, marks: shifted(marks, 0, over) };
}

/** Middles for labels so tall, last (uppermost) strip first in space: as near their strips as they can be without touching. */
function labelsApart(wanted: readonly Inches[], tall: readonly Inches[]): Inches[] {
  const apart = (at: number) => (tall[at - 1]! + tall[at]!) / 2;
  // Strips run from the foot upwards, so heights fall. Push up what is too close, then bring the whole back to the middle.
  const placed = [...wanted];
  for (let round = 0; round < wanted.length; round += 1) {
    for (let at = 1; at < placed.length; at += 1) {
      const lack = apart(at) - (placed[at - 1]! - placed[at]!);
      if (lack <= 1e-9) continue;
      placed[at - 1]! += lack / 2;
      placed[at]! -= lack / 2;
    }
  }
  for (let at = 1; at < placed.length; at += 1) {
    placed[at] = Math.min(placed[at]!, placed[at - 1]! - apart(at) + 1e-6);
  }
  return placed;
}
