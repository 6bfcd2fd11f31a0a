// What a fabric is used for, in a few words: its strips, sets, corners, sashing, borders.
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { FabricId, Project } from '../../../model/project';

/** For every fabric of the project, each use; an empty list for one nothing uses. */
export function fabricUses(project: Project): ReadonlyMap<FabricId, Phrase[]> {
  const uses = new Map<FabricId, Phrase[]>(project.fabrics.map((fabric) => [fabric.id, []]));
  const add = (fabric: FabricId, use: Phrase) => uses.get(fabric)?.push(use);
  const strips = new Map<FabricId, number>();
  for (const row of project.stripsOnHand) strips.set(row.fabric, (strips.get(row.fabric) ?? 0) + row.count);
  for (const [fabric, count] of strips)
    if (count > 0) add(fabric, counted(count, '{count} strip', '{count} strips'));
  for (const [fabric, labels] of setsOf(project)) add(fabric, setsPhrase(labels));
  add(project.setting.cornerFabric, phrase('corners'));
  const own = new Set(project.blocks.flatMap((block) => block.cornerFabric ?? []));
  for (const fabric of own)
    if (fabric !== project.setting.cornerFabric) add(fabric, phrase('corners of some blocks'));
  if (project.setting.sashing.where !== 'none') add(project.setting.sashing.fabric, phrase('sashing'));
  for (const fabric of new Set(project.setting.borders.map((border) => border.fabric)))
    add(fabric, phrase('border'));
  return uses;
}

function setsOf(project: Project): Map<FabricId, string[]> {
  const sets = new Map<FabricId, string[]>();
  for (const set of project.stripSets) {
    for (const fabric of new Set(set.strips.map((strip) => strip.fabric))) {
      sets.set(fabric, [...(sets.get(fabric) ?? []), set.label]);
    }
  }
  return sets;
}

/** Letters while they are few; a number once they are many. */
function setsPhrase(labels: readonly string[]): Phrase {
  if (labels.length > 6) return phrase('{count} sets', { count: labels.length });
  return counted(labels.length, 'set {sets}', 'sets {sets}', { sets: { list: [...labels] } });
}
