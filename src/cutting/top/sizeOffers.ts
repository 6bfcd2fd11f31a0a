// A size wanted, the other way round: the rows, columns, sashing and border that come closest to it with the blocks as they
// are, several ways ranked. Taking one up is editing/commands/takeOffer's.
import { borderedBy } from '../../geometry/borders';
import { finishedBlock, wedgeProblem } from '../../geometry/wedge';
import { piecesIn, USUAL } from '../../model/lengths';
import type { Project, Setting } from '../../model/project';
import type { Inches } from '../../model/units';

export interface SizeOffer {
  readonly rows: number;
  readonly columns: number;
  readonly sashing: { readonly where: Where; readonly width: Inches };
  /** Finished widths of the borders from the inside out: those there are, the outermost one changed, or a new one. */
  readonly borders: readonly Inches[];
  /** Finished size, and how far it is from what is wanted (larger: above 0). */
  readonly width: Inches;
  readonly height: Inches;
  readonly off: { readonly width: Inches; readonly height: Inches };
  /** Blocks it needs, plain squares not counted. */
  readonly blocks: number;
}

const MOST = 40;
const OFFERS = 6;
/** Borders wider than this part of a block look like a frame for something else (our choice). */
const WIDEST_BORDER = 0.6;

type Where = Setting['sashing']['where'];

interface Candidate {
  readonly offer: SizeOffer;
  readonly cost: number;
}

/**
 * Offers for a wanted finished size, the best first, no two with the same rows, columns and sashing; empty when the wedge plan
 * leaves no block, or nothing within half a block can be had. Uneven gaps and ends of borders are evened out in all of them.
 */
export function sizeOffers(project: Project, wanted: { width: Inches; height: Inches }): SizeOffer[] {
  if (wedgeProblem(project.wedge)) return [];
  const block = finishedBlock(project.wedge);
  const candidates = framesOf(project)
    .flatMap((frame) => candidatesFor(project, frame, wanted))
    // Half a block off is no longer about the size that was asked for.
    .filter(
      ({ offer: { off } }) =>
        Math.abs(off.width) <= block.width / 2 && Math.abs(off.height) <= block.height / 2,
    );
  const best = new Map<string, Candidate>();
  for (const one of candidates.toSorted((first, second) => first.cost - second.cost)) {
    const { rows, columns, sashing } = one.offer;
    const key = `${rows} ${columns} ${sashing.where}`;
    if (!best.has(key)) best.set(key, one);
  }
  return [...best.values()].slice(0, OFFERS).map((one) => one.offer);
}

interface Frame {
  readonly sashing: SizeOffer['sashing'];
  readonly borders: readonly Inches[];
  /** What it departs from the quilt as it is, in inches of size it has to be worth. */
  readonly change: number;
}

/** Every sashing with every border that may be tried. */
function framesOf(project: Project): Frame[] {
  const { sashing, borders, layout } = project.setting;
  const block = finishedBlock(project.wedge);
  const places: readonly Where[] =
    layout.kind === 'onPoint' ? ['none', 'around'] : ['none', 'between', 'around'];
  const usual = USUAL[project.preferences.unit];
  // Besides the quilt's own those makers use.
  const widths = [...new Set([sashing.width, ...usual.sashings])];
  const sashings = places.flatMap((where) =>
    (where === 'none' ? [sashing.width] : widths).map((width) => {
      const same = sashing.where === where && (where === 'none' || Math.abs(sashing.width - width) < 1e-9);
      return { where, width, change: same ? 0 : sashing.where === where ? 0.5 : 1.5 };
    }),
  );
  const now = borders.map((border) => border.width);
  const { least, step } = usual.borders;
  const widest = Math.max(least, WIDEST_BORDER * Math.min(block.width, block.height));
  const tried = Array.from({ length: piecesIn(widest - least, step) + 1 }, (_, at) => least + at * step);
  const framings = [
    { borders: now, change: 0 },
    ...(now.length > 0 ? [{ borders: [], change: 2 }] : []),
    ...tried.map((width) => ({ borders: [...now.slice(0, -1), width], change: now.length > 0 ? 0.5 : 1 })),
  ];
  return sashings.flatMap(({ change, ...one }) =>
    framings.map((framing) => ({
      sashing: one,
      borders: framing.borders,
      change: change + framing.change,
    })),
  );
}

/** The rows and columns nearest to the wanted size in this frame, and one more or less of each. */
function candidatesFor(
  project: Project,
  frame: Frame,
  wanted: { readonly width: Inches; readonly height: Inches },
): Candidate[] {
  const block = finishedBlock(project.wedge);
  const onPoint = project.setting.layout.kind === 'onPoint';
  const gap = frame.sashing.where === 'none' ? 0 : frame.sashing.width;
  const edge = frame.sashing.where === 'around' ? gap : frame.sashing.where === 'between' ? -gap / 2 : 0;
  const bordered = borderedBy(frame.borders.map((width) => ({ fabric: '', width }))).side;
  const measure = (count: number, size: Inches) =>
    onPoint ? count * Math.SQRT2 * (size + gap) + 2 * bordered : lengthOf(count, size, gap, frame, bordered);
  const near = (length: Inches, size: Inches) => {
    const pitch = onPoint ? Math.SQRT2 * (size + gap) : size + gap;
    const about = (length - 2 * bordered - 2 * Math.max(0, edge)) / pitch;
    return [Math.floor(about), Math.ceil(about)].filter((count) => count >= 1 && count <= MOST);
  };
  const counts = { rows: near(wanted.height, block.height), columns: near(wanted.width, block.width) };
  return counts.rows.flatMap((rows) =>
    counts.columns.map((columns): Candidate => {
      const width = measure(columns, block.width);
      const height = measure(rows, block.height);
      const off = { width: width - wanted.width, height: height - wanted.height };
      return {
        offer: {
          rows,
          columns,
          sashing: frame.sashing,
          borders: frame.borders,
          width,
          height,
          off,
          blocks: blocksOn(project, rows, columns),
        },
        cost: Math.abs(off.width) + Math.abs(off.height) + frame.change,
      };
    }),
  );
}

function lengthOf(count: number, size: Inches, gap: Inches, frame: Frame, bordered: Inches): Inches {
  const gaps = frame.sashing.where === 'around' ? count + 1 : count - 1;
  return count * size + gaps * gap + 2 * bordered;
}

/** Blocks on a wall of these rows and columns in the quilt's setting; plain squares are none. */
export function blocksOn(project: Pick<Project, 'setting'>, rows: number, columns: number): number {
  const { layout, plain } = project.setting;
  const second = layout.kind === 'onPoint' ? (rows - 1) * (columns - 1) : Math.floor((rows * columns) / 2);
  const all = layout.kind === 'onPoint' ? rows * columns + second : rows * columns;
  if (plain === null) return all;
  return plain.cells === 'second' ? all - second : second;
}
