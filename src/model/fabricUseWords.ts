// Words for the uses of a fabric: a word or two for lists, and a sentence that says why the fabric cannot be removed.
import { type QuiltPurpose, quiltUses } from './fabricUses';
import { findFabric } from './find';
import { type Phrase, phrase } from './phrase';
import type { FabricId, Project } from './project';

interface UseWords {
  readonly part: Phrase;
  readonly sentence: string;
}

/** The words of each use but 'strip': strips are named by the letters of their sets. */
const WORDS: Readonly<Record<Exclude<QuiltPurpose, 'strip'>, UseWords>> = {
  sideTriangles: { part: phrase('side triangles'), sentence: 'The side triangles are of {name}.' },
  settingCorners: { part: phrase('setting corners'), sentence: 'The setting corners are of {name}.' },
  plainSquares: { part: phrase('plain squares'), sentence: 'The plain squares are of {name}.' },
  corners: { part: phrase('corners'), sentence: 'The corner triangles are of {name}.' },
  cornersByRule: { part: phrase('corners of some blocks'), sentence: 'Some corner triangles are of {name}.' },
  sashing: { part: phrase('sashing'), sentence: 'The sashing is of {name}.' },
  sashingCornerstones: { part: phrase('cornerstones'), sentence: 'The cornerstones are of {name}.' },
  border: { part: phrase('border'), sentence: 'A border is of {name}.' },
  borderCornerstones: {
    part: phrase('cornerstones of a border'),
    sentence: 'The cornerstones of a border are of {name}.',
  },
  borderPieces: { part: phrase('pieced border'), sentence: 'A pieced border has {name} in it.' },
  binding: { part: phrase('binding'), sentence: 'The binding is of {name}.' },
  blockCorners: {
    part: phrase('corners of some blocks'),
    sentence: 'The corners of block {block} are of {name}.',
  },
  picturedBands: {
    part: phrase('blocks in pictures'),
    sentence: 'The picture of block {block} shows {name}.',
  },
  backing: { part: phrase('backing'), sentence: 'The backing is of {name}.' },
};

/** A use in a word or two: sashing, side triangles. */
export function partWords(purpose: Exclude<QuiltPurpose, 'strip'>): Phrase {
  return WORDS[purpose].part;
}

/** A sentence on the first use of a fabric in the quilt; null when the quilt does not use it (cloth on hand does not count). */
export function whereUsed(project: Project, id: FabricId): Phrase | null {
  const name = findFabric(project, id)?.name ?? '';
  const uses = quiltUses(project).filter((use) => use.fabric === id);
  const [first] = uses;
  if (!first) return null;
  if (first.purpose !== 'strip') {
    const ofBlock = first.purpose === 'blockCorners' || first.purpose === 'picturedBands';
    const block = ofBlock ? { block: first.of.number } : {};
    return phrase(WORDS[first.purpose].sentence, { name, ...block });
  }
  const sets = new Set(uses.flatMap((use) => (use.purpose === 'strip' ? [use.of.label] : [])));
  const say =
    sets.size === 1 ? '{name} is sewn into strip set {sets}.' : '{name} is sewn into strip sets {sets}.';
  return phrase(say, { name, sets: { list: [...sets] } });
}
