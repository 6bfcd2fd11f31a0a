// The sets of a quilt laid out as a whole: made of the strips that are left beside the sets there are, and of fabric cut into
// strips where that is wished or strips alone make no block. Sets that are there stay as they are.
import { afterCutting } from '../../cutting/plan/afterCutting';
import { clothBasket } from '../../cutting/plan/clothBasket';
import { largestTop } from '../../cutting/plan/largestTop';
import { usualWidths } from '../../cutting/plan/planStrips';
import { type MakingShare, makingSets } from '../../cutting/sets/randomSets';
import { stripsLeftBeside } from '../../cutting/sets/stripsUnused';
import { findingWhyLeft, type StripsLeft } from '../../cutting/sets/whyLeft';
import type { Phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { apply } from '../apply';
import { blocksAllowed } from '../commands/chooseWedges';
import { cutFromCloth } from '../commands/clothOnHand';

/** As many blocks as there are wedges for, or so many. */
export type BlocksWanted = 'most' | { readonly blocks: number };

export interface SetsSewn {
  readonly project: Project;
  /** Strips cut from fabric on hand. */
  readonly cut: number;
  /** Why there are not more sets. */
  readonly notes: readonly Phrase[];
  /** The strips on hand beside all sets, by the rule that leaves them. */
  readonly left: readonly StripsLeft[];
}
type Sewn = Omit<SetsSewn, 'left'>;

/** The most sets of a quilt (model/project). */
const MOST_SETS = 400;

/**
 * The project with all sets that its strips allow. `cut`: fabric on hand is cut into strips too. The same seed gives the same.
 * Sets are made once, or three times where fabric is cut; each yields its own share.
 */
export function* sewingSets(
  project: Project,
  want: BlocksWanted,
  cut: boolean,
  seed: number,
): Generator<MakingShare, SetsSewn> {
  const sewn = yield* sewing(project, want, cut, seed);
  const { fabrics, stripsOnHand, stripSets, wedge } = sewn.project;
  const beside = stripsLeftBeside(stripsOnHand, stripSets);
  return { ...sewn, left: yield* findingWhyLeft(beside, fabrics, wedge, want === 'most') };
}

function* sewing(
  project: Project,
  want: BlocksWanted,
  cut: boolean,
  seed: number,
): Generator<MakingShare, Sewn> {
  const asTheyAre = { ...(yield* makingWith(project, want, seed)), cut: 0 };
  if (project.clothOnHand.length === 0 || (!cut && blocksAllowed(asTheyAre.project) > 0)) return asTheyAre;
  const top = largestTop(clothBasket(project, usualWidths(project.preferences.unit)));
  const after = afterCutting(project, top.pieces, project.wedge.seam);
  const outcome = apply(project, cutFromCloth(project, after));
  if (after.cut === 0 || !outcome.ok) return { ...asTheyAre, notes: top.words };
  // All strips make most sets as a rule; the number that was planned is tried as well.
  const one = yield* makingWith(outcome.project, want, seed);
  const other = yield* makingWith(outcome.project, { blocks: top.blocks }, seed);
  const best = blocksAllowed(other.project) > blocksAllowed(one.project) ? other : one;
  return { ...best, cut: after.cut };
}

function* makingWith(
  project: Project,
  want: BlocksWanted,
  seed: number,
): Generator<MakingShare, Omit<Sewn, 'cut'>> {
  const { fabrics, preferences, stripsOnHand, stripSets, wedge } = project;
  const { lookalikes, unit } = preferences;
  const made = yield* makingSets({
    fabrics,
    lookalikes,
    stripsOnHand,
    wedge,
    unit,
    keep: stripSets,
    want,
    seed,
  });
  const sets = made.sets.slice(0, MOST_SETS - stripSets.length);
  return {
    project: sets.length === 0 ? project : { ...project, stripSets: [...stripSets, ...sets] },
    notes: stripsOnHand.length > 0 ? made.notes : [],
  };
}
