// Words on the uses of each fabric: strips and fabric on hand, sets, blocks, parts of the setting, colourways.
import { colourwayUses, type QuiltUse, rowUses, usesThatShow } from '../../../model/fabricUses';
import { partWords } from '../../../model/fabricUseWords';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { FabricId, Project } from '../../../model/project';

/** The uses of every fabric of the project, in words; an empty list for an unused fabric. */
export function usesInWords(project: Project): ReadonlyMap<FabricId, Phrase[]> {
  const inQuilt = byFabric(usesThatShow(project));
  const onHand = byFabric(rowUses(project));
  const inColourways = byFabric(colourwayUses(project));
  const blocksOf = blocksOfSets(project);
  return new Map(
    project.fabrics.map(({ id }) => [
      id,
      [
        ...onHandWords(onHand.get(id) ?? []),
        ...quiltWords(inQuilt.get(id) ?? [], blocksOf),
        ...colourwayWords(inColourways.get(id) ?? []),
      ],
    ]),
  );
}

function byFabric<Use extends { readonly fabric: FabricId }>(uses: readonly Use[]): Map<FabricId, Use[]> {
  const found = new Map<FabricId, Use[]>();
  for (const use of uses) {
    const own = found.get(use.fabric);
    if (own) own.push(use);
    else found.set(use.fabric, [use]);
  }
  return found;
}

/** The numbers of the blocks in which wedges of each set lie. */
function blocksOfSets({ blocks }: Project): ReadonlyMap<string, readonly number[]> {
  const found = new Map<string, number[]>();
  for (const block of blocks) {
    if (block.kind === 'pictured') continue;
    for (const set of new Set(block.places.flatMap((wedge) => wedge?.set ?? [])))
      found.set(set, [...(found.get(set) ?? []), block.number]);
  }
  return found;
}

function onHandWords(rows: ReturnType<typeof rowUses>): Phrase[] {
  const strips = rows.reduce((sum, use) => sum + (use.purpose === 'stripsOnHand' ? use.of.count : 0), 0);
  return [
    ...(strips > 0 ? [counted(strips, '{count} strip', '{count} strips')] : []),
    ...(rows.some(({ purpose }) => purpose === 'clothOnHand') ? [phrase('fabric on hand')] : []),
  ];
}

/** Sets, the blocks they lie in, and parts of the setting, each once. */
function quiltWords(uses: readonly QuiltUse[], blocksOf: ReadonlyMap<string, readonly number[]>): Phrase[] {
  const sets = new Set<string>();
  const blocks = new Set<number>();
  const parts = new Map<QuiltUse['purpose'], Phrase>();
  for (const use of uses) {
    if (use.purpose === 'strip') {
      sets.add(use.of.label);
      for (const block of blocksOf.get(use.of.id) ?? []) blocks.add(block);
    } else if (use.purpose === 'picturedBands') blocks.add(use.of.number);
    else parts.set(use.purpose, partWords(use.purpose));
  }
  // Corners of blocks are named once: as those of all blocks, by rule, or block by block.
  if (parts.has('corners') || parts.has('cornersByRule')) parts.delete('blockCorners');
  return [
    ...(sets.size > 0 ? [setsPhrase([...sets])] : []),
    ...(blocks.size > 0 ? [blocksPhrase([...blocks])] : []),
    ...parts.values(),
  ];
}

function colourwayWords(uses: ReturnType<typeof colourwayUses>): Phrase[] {
  const names = [...new Set(uses.map(({ of }) => of.name))];
  if (names.length === 0) return [];
  return [counted(names.length, 'colourway {names}', 'colourways {names}', { names: { list: names } })];
}

/** The sets in words: their letters, or their number where there are many. */
function setsPhrase(labels: readonly string[]): Phrase {
  if (labels.length > 6) return phrase('{count} sets', { count: labels.length });
  return counted(labels.length, 'set {sets}', 'sets {sets}', { sets: { list: [...labels] } });
}

/** Block numbers in runs: 1–4, 7 and 9; or how many there are where the runs are many. */
function blocksPhrase(numbers: readonly number[]): Phrase {
  const runs = runsOf(numbers);
  if (runs.length > 6) return phrase('{count} blocks', { count: numbers.length });
  return counted(numbers.length, 'block {blocks}', 'blocks {blocks}', { blocks: { list: runs } });
}

function runsOf(numbers: readonly number[]): string[] {
  const runs: { from: number; to: number }[] = [];
  for (const number of numbers.toSorted((one, other) => one - other)) {
    const last = runs.at(-1);
    if (last?.to === number - 1) last.to = number;
    else runs.push({ from: number, to: number });
  }
  return runs.flatMap(({ from, to }) => (to - from < 2 ? spread(from, to) : [`${from}–${to}`]));
}

function spread(from: number, to: number): string[] {
  return from === to ? [String(from)] : [String(from), String(to)];
}
