// The tallest wedge that the sets still give to the blocks, and why a taller one is refused.
import { heightShort } from '../../geometry/stripSet';
import { wedgeProblem } from '../../geometry/wedge';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { CENTIMETRES_PER_INCH, type Inches } from '../../model/units';
import { countKept } from './countKept';
import { type LedgerRow, wedgeLedger } from './ledger';

/** A cut height is at most so much, inches. */
export const TALLEST: Inches = 40;

/** Heights are offered in sixteenths of an inch, or in millimetres. */
const STEPS = { in: 1 / 16, cm: 0.1 / CENTIMETRES_PER_INCH } as const;

function withHeight(project: Project, cutHeight: Inches): Project {
  const wedge = { ...project.wedge, cutHeight };
  const stripSets = project.stripSets.map((set) => ({
    ...set,
    cut: countKept(set, wedge, { set, wedge: project.wedge }),
  }));
  return { ...project, wedge, stripSets };
}

/** The sets that would not give the wedges that the blocks use, the lowest first. */
function lacking(project: Project, cutHeight: Inches): LedgerRow[] {
  return wedgeLedger(withHeight(project, cutHeight))
    .filter(({ left }) => left.up < 0 || left.down < 0)
    .sort((one, other) => one.height - other.height);
}

/**
 * The greatest cut height, on a step of the project's unit, at which the sets give all wedges that the blocks use; null where
 * there is none. A taller wedge has a wider base, so a set never gives more of it: the steps are halved until one is left.
 */
export function tallestWedge(project: Project): Inches | null {
  const step = STEPS[project.preferences.unit];
  let [fits, fails] = [0, Math.floor(TALLEST / step) + 1];
  while (fails - fits > 1) {
    const middle = Math.floor((fits + fails) / 2);
    if (lacking(project, middle * step).length === 0) fits = middle;
    else fails = middle;
  }
  const tallest = fits * step;
  return fits === 0 || wedgeProblem(withHeight(project, tallest).wedge) ? null : tallest;
}

/** Why wedges cannot be cut so high, with the greatest height that can be; null where they can. */
export function whyTooTall(project: Project, cutHeight: Inches): Phrase | null {
  const [row] = lacking(project, cutHeight);
  if (!row) return null;
  const values = {
    wanted: { inches: cutHeight },
    set: row.set.label,
    height: { atMost: row.height },
    there: row.available.up + row.available.down,
    used: row.used.up + row.used.down,
  };
  const reason =
    heightShort(row.height, { cutHeight }) > 0
      ? phrase('A wedge {wanted} high does not fit on set {set}, which blocks use: it is {height} high.', values)
      : counted(
          values.there,
          'Set {set} gives 1 wedge {wanted} high, and blocks use {used} of it.',
          'Set {set} gives {there} wedges {wanted} high, and blocks use {used} of it.',
          values,
        );
  const tallest = tallestWedge(project);
  const limit =
    tallest === null
      ? phrase('No height fits these blocks.')
      : phrase('The tallest that fits is {tallest}.', { tallest: { inches: tallest } });
  return phrase('{reason} {limit}', { reason, limit });
} // biome-ignore format: one line to a sentence
