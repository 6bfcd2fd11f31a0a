// Commands on fabrics.
import { everyCloth } from '../../model/colourway';
import { colourwayUses, exchangeFabrics, rowUses, usesThatShow } from '../../model/fabricUses';
import { whereUsed } from '../../model/fabricUseWords';
import { findFabric, freshId } from '../../model/find';
import { counted, phrase } from '../../model/phrase';
import type { Fabric, FabricId, Project } from '../../model/project';
import { type Command, Refusal } from '../apply';

/** Adds a fabric under a new id. */
export function addFabric(fabric: Omit<Fabric, 'id'>): Command {
  return {
    label: phrase('add the fabric {name}', { name: fabric.name }),
    change: (draft) => {
      draft.fabrics.push({ ...fabric, id: freshId('f', everyCloth(draft)) });
    },
  };
}

/** Adds several fabrics at once, under new ids. */
export function addFabrics(fabrics: readonly Omit<Fabric, 'id'>[]): Command {
  const [first] = fabrics;
  if (first && fabrics.length === 1) return addFabric(first);
  return {
    label: phrase('add {count} fabrics', { count: fabrics.length }),
    change: (draft) => {
      for (const fabric of fabrics) draft.fabrics.push({ ...fabric, id: freshId('f', everyCloth(draft)) });
    },
  };
}

/** Changes name, colour, print or background of a fabric. */
export function changeFabric(project: Project, id: FabricId, to: Partial<Omit<Fabric, 'id'>>): Command {
  const name = to.name ?? findFabric(project, id)?.name ?? '';
  return {
    label: phrase('change the fabric {name}', { name }),
    change: (draft) => {
      const fabric = findFabric(draft, id);
      if (!fabric) throw new Error(`changeFabric: no fabric ${id}`);
      Object.assign(fabric, to);
    },
  };
}

/** Removes a fabric with its rows on hand and its swaps. Refused, naming its first use, while the quilt uses it. */
export function removeFabric(project: Project, id: FabricId): Command {
  const name = findFabric(project, id)?.name ?? '';
  return {
    label: phrase('remove the fabric {name}', { name }),
    change: (draft) => {
      const use = whereUsed(draft, id);
      if (use) {
        throw new Refusal(
          'fabric-in-use',
          'fabrics',
          phrase('{use} Choose another fabric there first.', { use }),
        );
      }
      draft.fabrics = draft.fabrics.filter((fabric) => fabric.id !== id);
      for (const { fabric, drop } of rowUses(draft)) if (fabric === id) drop();
    },
  };
}

/** In how many places of the quilt that show, and of its colourways, a fabric is named. */
export function placesOf(project: Project, id: FabricId): number {
  return [...usesThatShow(project), ...colourwayUses(project)].filter((use) => use.fabric === id).length;
}

/** Replaces the fabric `id` by the fabric `by` everywhere in the quilt and its colourways; `id` stays in the list, unused. */
export function replaceFabric(project: Project, id: FabricId, by: FabricId): Command {
  const names = { name: findFabric(project, id)?.name ?? '', other: findFabric(project, by)?.name ?? '' };
  return {
    label: counted(
      placesOf(project, id),
      'replace {name} with {other} in 1 place',
      'replace {name} with {other} in {count} places',
      names,
    ),
    change: (draft) => {
      const sewn = draft.stripSets.find(
        (set) => set.progress !== 'planned' && set.strips.some((strip) => strip.fabric === id),
      );
      if (sewn) {
        const say = 'Set {set} is sewn with {name}; it cannot be changed there.';
        throw new Refusal('set-sewn', 'fabrics', phrase(say, { set: sewn.label, name: names.name }));
      }
      exchangeFabrics(draft, (fabric) => (fabric === id ? by : fabric));
      replaceInColourways(draft, id, by);
    },
  };
}

/** A colourway that exchanges `by` already goes on doing so; a row that would exchange a fabric for itself goes. */
function replaceInColourways(draft: Project, id: FabricId, by: FabricId): void {
  if (id === by) return;
  for (const use of colourwayUses(draft).filter(({ fabric }) => fabric === id)) {
    const known = use.purpose === 'exchanged' && use.of.swaps.some((swap) => swap.fabric === by);
    if (known) use.drop();
    else use.put(by);
  }
  for (const colourway of draft.colourways)
    colourway.swaps = colourway.swaps.filter((swap) => swap.fabric !== swap.by);
}
