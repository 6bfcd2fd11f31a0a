// Says what a fabric of the quilt is for: in a word or two for lists, and as a sentence where it stops a removal.
import { type QuiltPurpose, quiltUses } from './fabricUses';
import { findFabric } from './find';
import { type Phrase, phrase } from './phrase';
import type { FabricId, Project } from './project';

interface UseWords {
  readonly part: Phrase;
  readonly sentence: string;
}

/** Strips are told by the letters of their sets. */
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
  backing: { part: phrase('backing'), sentence: 'The backing is of {name}.' },
};

/** What it is for, in a word or two: sashing, side triangles. */
export function partWords(purpose: Exclude<QuiltPurpose, 'strip'>): Phrase {
  return WORDS[purpose].part;
}

/** Where a fabric is first used in the quilt, in a sentence; null when only strips and cloth on hand are of it. */
export function whereUsed(project: Project, id: FabricId): Phrase | null {
  const name = findFabric(project, id)?.name ?? '';
  const uses = quiltUses(project).filter((use) => use.fabric === id);
  const [first] = uses;
  if (!first) return null;
  if (first.purpose !== 'strip') {
    const block = first.purpose === 'blockCorners' ? { block: first.of.number } : {};
    return phrase(WORDS[first.purpose].sentence, { name, ...block });
  }
  const sets = new Set(uses.flatMap((use) => (use.purpose === 'strip' ? [use.of.label] : [])));
  const say =
    sets.size === 1 ? '{name} is sewn into strip set {sets}.' : '{name} is sewn into strip sets {sets}.';
  return phrase(say, { name, sets: { list: [...sets] } });
}
