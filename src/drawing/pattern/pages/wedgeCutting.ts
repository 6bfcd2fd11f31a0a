// Cutting wedges from the sets: where each lies, tip up and tip down in turn, where the cuts run, what is left over. Sets
// that are cut alike share a drawing. How wedges are laid, in words and lines: cutting/wedges/laying.ts.
import { cutLines, layingWords } from '../../../cutting/wedges/laying';
import { growsWithUse, type LedgerRow, wedgeLedger } from '../../../cutting/wedges/ledger';
import { notDrawnWords } from '../../../cutting/wedges/uses';
import { plannedWedges, type WedgeCount, wedgeCuts, wedgeStart } from '../../../cutting/wedges/yield';
import type { Outline } from '../../../geometry/point';
import { heightShort, setHeight, stripPlaces, wedgeOnSet } from '../../../geometry/stripSet';
import { cutWedge } from '../../../geometry/wedge';
import { counted, type Phrase } from '../../../model/phrase';
import type { StripSet } from '../../../model/project';
import type { Inches } from '../../../model/units';
import type { Composer } from '../composer';
import { line, textFigure, textWidth } from '../lettering';
import { EDGE, FIRM, ink, SEAM, STYLES, type Style } from '../look';
import { type Figure, type Mark, shifted, stacked } from '../page';
import { measure, numberDisc } from '../signs';
import { clothOf, type Writing } from '../writing';

const MOST_HIGH: Inches = 1.6;
/** More names than these are set smaller above their drawing. */
const MANY_NAMES = 12;

export function wedgeCuttingPages(composer: Composer, writing: Writing): void {
  const { project, say } = writing;
  const { wedge } = project;
  // Of a set known from its sewn wedges alone there is no length to lay wedges on.
  const sets = project.stripSets.filter(
    (set) => heightShort(setHeight(set.strips, wedge.seam), wedge) === 0 && !growsWithUse(set),
  );
  const groups = cutAlike(sets, writing);
  if (groups.length === 0) return;
  composer.begin(say('Cutting the wedges'));
  // Said once where every set is cut the same way, else over each drawing.
  const ways = groups.map((group) => layingWords(group[0]!, wedge).map((sentence) => say(sentence)));
  const alike = new Set(ways.filter((way) => way.length > 0).map((way) => way.join('\n'))).size <= 1;
  composer.steps([
    say('Straighten the left end of the set.'),
    say('Lay the template there with its rim along the outer edge of the first strip (tip up) or of the last strip (tip down); the drawing says which comes first.'),
    ...(alike ? (ways.find((way) => way.length > 0) ?? []) : [say('Go on as it says over the drawing of the set: where the next wedge lies, and how far to cut, depend on how high the set is.')]),
    say('Pile the wedges by set and tip, and label the piles: {set} up, {set} down.', { set: groups[0]![0]!.label }),
  ]); // biome-ignore format: a list
  const ledger = new Map(wedgeLedger(project).map((row) => [row.set.id, row]));
  groups.forEach((group, index) => {
    const uses = group.flatMap((set) => countsOf(ledger.get(set.id)!, writing));
    composer.add(cuttingFigure(group, uses, alike ? [] : ways[index]!, composer.width, writing), 0.3);
  });
}

/** Sets with the same height, length and first tip, in order. */
function cutAlike(sets: readonly StripSet[], { project }: Writing): StripSet[][] {
  const groups = new Map<string, StripSet[]>();
  for (const set of sets) {
    const height = setHeight(set.strips, project.wedge.seam);
    const key = `${height.toFixed(4)} ${set.length.toFixed(4)} ${set.firstTip}`;
    const group = groups.get(key);
    if (group) group.push(set);
    else groups.set(key, [set]);
  }
  return [...groups.values()];
}

function cuttingFigure(
  group: readonly StripSet[],
  uses: readonly string[],
  way: readonly string[],
  width: Inches,
  writing: Writing,
): Figure {
  const { project, say, type } = writing;
  const set = group[0]!;
  const height = setHeight(set.strips, project.wedge.seam);
  const scale = Math.min(width / set.length, MOST_HIGH / height);
  return stacked(
    [
      textFigure(say(setNames(group)), group.length > MANY_NAMES ? STYLES.strong : STYLES.card, width, type),
      textFigure(facts(set, height, writing), STYLES.small, width, type),
      ...(uses.length > 0 ? [textFigure(uses.join(' '), STYLES.small, width, type)] : []),
      ...(way.length > 0 ? [textFigure(way.join(' '), STYLES.small, width, type)] : []),
      { width, height: height * scale, marks: setMarks(set, height, scale, writing) },
      ruler(set, height, scale, writing),
    ],
    0.06,
  );
}

function setNames(group: readonly StripSet[]): Phrase {
  const labels = group.map((set) => set.label);
  const list = { list: labels };
  return counted(labels.length, 'Set {sets}', 'Sets {sets}, cut alike', { sets: list });
}

function facts(set: StripSet, height: Inches, { project, say }: Writing): string {
  // What the drawing below shows and new cloth gives; what was counted by hand is said of each set.
  const count = plannedWedges(set, project.wedge);
  const all = count.up + count.down;
  const values = { length: { inches: set.length }, height: { inches: height } };
  if (all === 0) return say('No wedge fits on {length} of a set {height} high.', values);
  const wedges = { ...values, wedges: { list: byTip(count, say) } };
  const given = counted(
    all,
    '1 wedge from {length} of a set {height} high: {wedges}',
    '{count} wedges from {length} of a set {height} high: {wedges}',
    wedges,
  );
  return say(set.firstTip === 'up' ? '{given}; the first is tip up.' : '{given}; the first is tip down.', {
    given,
  });
}

/** So many tip up, so many tip down; of none nothing. */
function byTip({ up, down }: WedgeCount, say: Writing['say']): string[] {
  return [
    ...(up > 0 ? [say('{count} tip up', { count: up })] : []),
    ...(down > 0 ? [say('{count} tip down', { count: down })] : []),
  ];
}

/** Of a set counted by hand how many wedges it has; then how many the blocks use, nothing where none is to spare. */
function countsOf({ set, available, used, left }: LedgerRow, { project, say }: Writing): string[] {
  const [there, list] = [byTip(available, say), byTip(used, say)];
  const values = { set: set.label };
  const none = there.length === 0;
  const byHand = none
    ? say('Counted by hand, set {set} has none.', values)
    : say('Counted by hand, set {set} has {wedges}.', { ...values, wedges: { list: there } });
  const uses =
    list.length === 0
      ? say('The blocks use none of set {set}.', values)
      : say('The blocks use {wedges} of set {set}.', { ...values, wedges: { list } });
  const notDrawn = notDrawnWords(set, project.wedge);
  return [
    ...(set.cut ? [byHand] : []),
    ...(notDrawn ? [say(notDrawn)] : []),
    ...(left.up + left.down > 0 ? [uses] : []),
  ];
}

function setMarks(set: StripSet, height: Inches, scale: number, writing: Writing): Mark[] {
  const { project, type } = writing;
  const { wedge } = project;
  const right = set.length * scale;
  const bottom = height * scale;
  const box: Outline = [{ x: 0, y: 0 }, { x: right, y: 0 }, { x: right, y: bottom }, { x: 0, y: bottom }]; // biome-ignore format: a box
  const marks: Mark[] = [
    { kind: 'shape', outlines: [box], fill: ink('#f2f2f0'), stroke: null },
    { kind: 'shape', outlines: hatch(right, bottom), fill: ink('#b9b9b6'), stroke: null },
  ];
  const places = stripPlaces(set.strips, wedge.seam);
  const room = cutWedge(wedge).base * scale * 0.24;
  const number: Style = { ...STYLES.labelStrong, size: Math.min(STYLES.labelStrong.size, room) };
  const discs: Mark[] = [];
  wedgeCuts(set, wedge).forEach((cut, index) => {
    const outline = wedgeOnSet(cut.start, cut.tip, height, wedge);
    for (const { strip, top, bottom: foot } of places) {
      const band = between(outline, top, foot);
      if (band.length < 3) continue;
      const fill = clothOf(writing, set.strips[strip]!.fabric, scale, cut.tip === 'up' ? 0 : 180);
      marks.push({ kind: 'shape', outlines: [scaled(band, scale)], fill, stroke: SEAM });
    }
    const ends = outline.map((point) => point.x);
    const middle = ((Math.min(...ends) + Math.max(...ends)) / 2) * scale;
    const inward = cut.tip === 'up' ? -1 : 1;
    const y = (outline[0]!.y + inward * wedge.cutHeight * 0.3) * scale;
    discs.push(...numberDisc(String(index + 1), { x: middle, y }, number, type));
  });
  marks.push({ kind: 'shape', outlines: [box], fill: null, stroke: EDGE });
  const cuts = cutLines(set, wedge).map(({ from, to }): Mark => ({ kind: 'line', points: scaled([from, to], scale), stroke: FIRM })); // biome-ignore format: one line
  return [...marks, ...cuts, ...discs];
}

/** Under the set: how far along the next base starts, and the whole length. */
function ruler(set: StripSet, height: Inches, scale: number, { project, say, type }: Writing): Figure {
  const words = (inches: Inches) => say('{length}', { length: { inches } });
  const pitch = wedgeStart(1, height, project.wedge);
  const y = 0.08;
  const marks = measure(
    { x: 0, y },
    { x: set.length * scale, y },
    words(set.length),
    STYLES.labelStrong,
    type,
  );
  if (wedgeCuts(set, project.wedge).length < 2 || pitch <= 0) return { width: 0, height: 0.16, marks };
  const end = { x: pitch * scale, y };
  // Beside a span that is too short for its figure the figure stands on the right of it.
  const next =
    textWidth(words(pitch), STYLES.label, type) + 0.08 > end.x
      ? [
          ...measure({ x: 0, y }, end, '', STYLES.label, type),
          ...line(words(pitch), STYLES.label, end.x + 0.06, y + STYLES.label.size * 0.34, type),
        ]
      : measure({ x: 0, y }, end, words(pitch), STYLES.label, type);
  return { width: 0, height: 0.34, marks: [...next, ...shifted(marks, 0, 0.18)] };
}

function scaled(outline: Outline, scale: number): Outline {
  return outline.map(({ x, y }) => ({ x: x * scale, y: y * scale }));
}

/** What of a convex outline lies between two heights. */
function between(outline: Outline, top: Inches, bottom: Inches): Outline {
  const cut = (points: Outline, depth: (y: Inches) => number): Outline =>
    points.flatMap((point, index) => {
      const next = points[(index + 1) % points.length]!;
      const [here, there] = [depth(point.y), depth(next.y)];
      const kept = here >= -1e-9 ? [point] : [];
      if (here * there >= -1e-12) return kept;
      const part = here / (here - there);
      return [...kept, { x: point.x + part * (next.x - point.x), y: point.y + part * (next.y - point.y) }];
    });
  return cut(
    cut(outline, (y) => y - top),
    (y) => bottom - y,
  );
}

/** Slanted bars across a box. */
function hatch(width: Inches, height: Inches): Outline[] {
  const step = 0.085;
  const bar = 0.011;
  const bars: Outline[] = [];
  for (let x = -height; x < width; x += step) {
    const [from, to] = [Math.max(x, 0), Math.min(x + height, width)];
    if (to - from < bar) continue;
    const yOf = (at: Inches) => height - (at - x);
    const end = Math.min(to, width - bar);
    bars.push([
      { x: from, y: yOf(from) },
      { x: from + bar, y: yOf(from) },
      { x: end + bar, y: yOf(end) },
      { x: end, y: yOf(end) },
    ]);
  }
  return bars;
}
