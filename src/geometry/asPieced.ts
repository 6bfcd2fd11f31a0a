// Pictured blocks written out as pieced ones, for everything that asks what lies on the wall: balance, arranging, drawing. Each
// wedge gets a strip set of its own, made from its bands and never stored. Cutting and sets see the project as it is.
import { HAIR } from '../model/lengths';
import { type Phrase, phrase } from '../model/phrase';
import type {
  Block,
  PicturedBlock,
  PicturedWedge,
  Project,
  Strip,
  StripSet,
  WedgePlan,
} from '../model/project';
import type { Problem } from '../model/result';
import type { Inches } from '../model/units';
import { cutWidth, setHeight } from './stripSet';
import { apothem, wedgeProblem } from './wedge';

/** Bands that fall short of the middle, or run past it, by no more than this share of the wedge are a reading's error. */
const READING_ERROR = 0.1;

/** Longer than any id of the document, so that no set there has the id of one made here. */
const SHOWN = 'shown in the picture of a block, and so in no strip set of the quilt';

/** A pictured block as a pieced one, with the sets its wedges would be cut from. */
export interface WrittenOut {
  readonly block: Block;
  readonly sets: readonly StripSet[];
}

const written = new WeakMap<Block, { readonly wedge: WedgePlan; readonly out: WrittenOut }>();

/**
 * A block written out: the bands of each wedge from the rim in, as far as they are known. A wedge whose rim is not known is an
 * empty place; beyond the first band that is not known the middle is bare. A pieced block is given back as it is.
 */
export function writtenOut(block: Block, wedge: WedgePlan): WrittenOut {
  if (block.kind === 'pieced') return { block, sets: [] };
  const kept = written.get(block);
  if (kept?.wedge === wedge) return kept.out;
  const out = writeOut(block, wedge);
  written.set(block, { wedge, out });
  return out;
}

function writeOut(block: PicturedBlock, wedge: WedgePlan): WrittenOut {
  const { picture: _, wedges, ...rest } = block;
  const sets = wedges.map((one, place): StripSet => {
    const id = `${SHOWN}: ${block.id} ${place + 1}`;
    return { id, label: `${block.number}.${place + 1}`, strips: shownStrips(one, wedge), ...SEWN_UP };
  });
  const places = sets.map(({ id, strips }) => (strips.length > 0 ? { set: id, tip: 'up' as const } : null));
  return {
    block: { ...rest, kind: 'pieced', places },
    sets: sets.filter(({ strips }) => strips.length > 0),
  };
}

/** A set of which there is one wedge, tip up, and no more. */
const SEWN_UP = {
  length: 0,
  pressing: 'last',
  firstTip: 'up',
  progress: 'cut',
  cut: { up: 1, down: 0 },
  locked: true,
} satisfies Partial<StripSet>;

/** Strips of the bands that are known, to the first that is not. Where all are, the last one reaches the middle. */
function shownStrips(shown: PicturedWedge, wedge: WedgePlan): Strip[] {
  const unknown = shown.bands.findIndex((band) => band.fabric === null);
  const bands = unknown < 0 ? shown.bands : shown.bands.slice(0, unknown);
  const known = bands.map(({ fabric, width }) => ({ fabric: fabric!, width }));
  return isWhole(shown, wedge) ? sewnStrips(known, wedge) : stripsOf(known, wedge);
}

/** Whether every band of a wedge is known and they reach the middle of the block. */
function isWhole({ bands }: PicturedWedge, wedge: WedgePlan): boolean {
  if (bands.length === 0 || bands.some((band) => band.fabric === null)) return false;
  return shownHeight(bands) >= (1 - READING_ERROR) * apothem(wedge);
}

function shownHeight(bands: readonly { readonly width: Inches }[]): Inches {
  return bands.reduce((sum, band) => sum + band.width, 0);
}

/** What shows of one strip: its fabric, and inches from seam to seam along the middle of the wedge. */
interface Shown {
  readonly fabric: string;
  readonly width: Inches;
}

/** Strips that show as these bands do, from the rim in, with the seams they are sewn with; the last one has a raw edge. */
function stripsOf(bands: readonly Shown[], { seam, outerSeam }: WedgePlan): Strip[] {
  return bands.map(({ fabric, width }, at) => {
    const cut = at === 0 ? width + seam + outerSeam : cutWidth(width, seam);
    return { fabric, width: at === bands.length - 1 ? cut - seam : cut };
  });
}

/** The same for a whole wedge: the last strip is as wide as the wedge needs, whatever its band shows. Empty without bands. */
export function sewnStrips(bands: readonly Shown[], wedge: WedgePlan): Strip[] {
  const strips = stripsOf(bands, wedge);
  const last = strips.at(-1);
  if (last) last.width += wedge.cutHeight - setHeight(strips, wedge.seam);
  return strips;
}

/** The first place (from 1) of a pictured block of which not all is known, so that it cannot be told as a pieced block; or null. */
export function firstUnknown(block: PicturedBlock, wedge: WedgePlan): number | null {
  const at = block.wedges.findIndex((one) => !isWhole(one, wedge));
  return at < 0 ? null : at + 1;
}

const pieced = new WeakMap<Project, Project>();
const combined = new WeakMap<readonly StripSet[], StripSet[]>();

/**
 * The same quilt with every pictured block written out as a pieced one: on the wall it looks and clashes the same. Blocks keep
 * their ids and numbers, so moves found on it are moves of the project. The project itself where no block is a picture.
 * The sets of the quilt come first; as long as no picture changes, the list of sets is the very same.
 */
export function asPieced(project: Project): Project {
  if (!project.blocks.some((block) => block.kind === 'pictured')) return project;
  let made = pieced.get(project);
  if (!made) {
    const outs = project.blocks.map((block) => writtenOut(block, project.wedge));
    const stripSets = sameList(project.stripSets, [...project.stripSets, ...outs.flatMap((out) => out.sets)]);
    made = { ...project, stripSets, blocks: outs.map((out) => out.block) };
    pieced.set(project, made);
  }
  return made;
}

/** The list made last from these sets if it holds the very same ones. */
function sameList(from: readonly StripSet[], made: StripSet[]): StripSet[] {
  const last = combined.get(from);
  if (last?.length === made.length && last.every((set, at) => set === made[at])) return last;
  combined.set(from, made);
  return made;
}

/** Problems of pictured blocks that do not fit the wedge: bands that reach well past the middle. */
export function checkPictured({ blocks, wedge }: Project): Problem[] {
  if (wedgeProblem(wedge)) return [];
  const most = (1 + READING_ERROR) * apothem(wedge) + HAIR;
  return blocks.flatMap((block, at) =>
    block.kind === 'pieced'
      ? []
      : block.wedges.flatMap(({ bands }, place): Problem[] => {
          const path = `blocks[${at}].wedges[${place}].bands`;
          const message = tooHigh(block.number, place + 1, shownHeight(bands), wedge);
          return shownHeight(bands) > most ? [{ code: 'bands-too-long', path, message }] : [];
        }),
  );
}

function tooHigh(block: number, place: number, sum: Inches, wedge: WedgePlan): Phrase {
  const say = 'Block {block}, place {place}: the bands show {sum} together; from rim to middle are {height}.';
  return phrase(say, { block, place, sum: { inches: sum }, height: { inches: apothem(wedge) } });
}
