// What a fabric is used for, in a few words: its strips, sets, corners, sashing, borders.
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { FabricId, Project } from '../../../model/project';
import { settingFabrics } from '../../../model/settingFabrics';

/** For every fabric of the project, each use; an empty list for one nothing uses. */
export function fabricUses(project: Project): ReadonlyMap<FabricId, Phrase[]> {
  const uses = new Map<FabricId, Phrase[]>(project.fabrics.map((fabric) => [fabric.id, []]));
  const add = (fabric: FabricId, use: Phrase) => uses.get(fabric)?.push(use);
  const strips = new Map<FabricId, number>();
  for (const row of project.stripsOnHand) strips.set(row.fabric, (strips.get(row.fabric) ?? 0) + row.count);
  for (const [fabric, count] of strips)
    if (count > 0) add(fabric, counted(count, '{count} strip', '{count} strips'));
  for (const [fabric, labels] of setsOf(project)) add(fabric, setsPhrase(labels));
  const told = new Set<string>();
  for (const { fabric, part, shows } of settingFabrics(project.setting)) {
    const key = `${fabric} ${part.say}`;
    if (shows && !told.has(key)) add(fabric, part);
    told.add(key);
  }
  const own = new Set(project.blocks.flatMap((block) => block.cornerFabric ?? []));
  for (const fabric of own)
    if (!told.has(`${fabric} corners`) && !told.has(`${fabric} corners of some blocks`))
      add(fabric, phrase('corners of some blocks'));
  if (project.buying.backing.fabric !== null) add(project.buying.backing.fabric, phrase('backing'));
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
