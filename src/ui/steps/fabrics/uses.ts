// Words on the uses of each fabric: strips, sets, corners, sashing, borders.
import { type FabricUse, fabricUses } from '../../../model/fabricUses';
import { partWords } from '../../../model/fabricUseWords';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { FabricId, Project } from '../../../model/project';

/** The uses of every fabric of the project, in words; an empty list for an unused fabric. */
export function usesInWords(project: Project): ReadonlyMap<FabricId, Phrase[]> {
  const uses = new Map<FabricId, FabricUse[]>(project.fabrics.map((fabric) => [fabric.id, []]));
  for (const use of fabricUses(project)) if (shows(use)) uses.get(use.fabric)?.push(use);
  return new Map(Array.from(uses, ([fabric, own]) => [fabric, wordsOf(own)]));
}

/** Whether a use shows in the quilt; the fabric of sashing that lies nowhere does not. */
function shows(use: FabricUse): boolean {
  switch (use.purpose) {
    case 'sashing':
    case 'sashingCornerstones':
      return use.of.where !== 'none';
    case 'border':
      return use.of.keys === undefined;
    default:
      return true;
  }
}

/** The uses of one fabric in words, each once. */
function wordsOf(uses: readonly FabricUse[]): Phrase[] {
  let strips = 0;
  const sets = new Set<string>();
  const parts = new Map<FabricUse['purpose'], Phrase>();
  for (const use of uses) {
    switch (use.purpose) {
      case 'stripsOnHand':
        strips += use.of.count;
        break;
      case 'strip':
        sets.add(use.of.label);
        break;
      case 'clothOnHand':
      case 'exchanged':
      case 'standIn':
        break;
      default:
        parts.set(use.purpose, partWords(use.purpose));
    }
  }
  // Corners of blocks are named once: as those of all blocks, by rule, or block by block.
  if (parts.has('corners') || parts.has('cornersByRule')) parts.delete('blockCorners');
  return [
    ...(strips > 0 ? [counted(strips, '{count} strip', '{count} strips')] : []),
    ...(sets.size > 0 ? [setsPhrase([...sets])] : []),
    ...parts.values(),
  ];
}

/** The sets in words: their letters, or their number where there are many. */
function setsPhrase(labels: readonly string[]): Phrase {
  if (labels.length > 6) return phrase('{count} sets', { count: labels.length });
  return counted(labels.length, 'set {sets}', 'sets {sets}', { sets: { list: [...labels] } });
}
