// Commands on colourways: the same quilt in other cloth.
import { current } from 'immer';
import { hueTurned } from '../colour/hue';
import { inColourway } from '../model/colourway';
import { freshId } from '../model/find';
import { nameWith } from '../model/name';
import { phrase } from '../model/phrase';
import type { Colourway, Fabric, FabricId, Project } from '../model/project';
import { type Command, Refusal } from './apply';

/** Adds a colourway with the given swaps. */
export function addColourway(name: string, swaps: Colourway['swaps']): Command {
  return {
    label: phrase('add the colourway {name}', { name }),
    change: (draft) => {
      draft.colourways.push({
        id: freshId('c', draft.colourways),
        name,
        swaps: swaps.map((swap) => ({ ...swap })),
      });
    },
  };
}

/**
 * Adds a colourway in cloth that is not there yet: every fabric but the background with its hues turned by `degrees`, as
 * light or dark as before. The made-up fabrics join the list, so that real ones can take their place.
 */
export function addTurnedColourway(name: string, inUse: readonly Fabric[], degrees: number): Command {
  return {
    label: phrase('add the colourway {name}', { name }),
    change: (draft) => {
      const swaps: Colourway['swaps'] = [];
      for (const fabric of inUse) {
        if (fabric.background) continue;
        const by = freshId('f', draft.fabrics);
        draft.fabrics.push({
          ...turnedCloth(fabric, degrees),
          id: by,
          name: nameWith(fabric.name, `, ${name}`),
        });
        swaps.push({ fabric: fabric.id, by });
      }
      draft.colourways.push({ id: freshId('c', draft.colourways), name, swaps });
    },
  };
}

function turnedCloth(fabric: Fabric, degrees: number): Fabric {
  const colour = hueTurned(fabric.colour, degrees);
  if (fabric.cloth.kind === 'plain') return { ...fabric, colour };
  const { print } = fabric.cloth;
  const inks = print.inks.map((ink) => hueTurned(ink, degrees));
  return { ...fabric, colour, cloth: { kind: 'print', print: { ...print, inks } } };
}

/** Chooses what stands for a fabric; the fabric itself takes the swap out. */
export function changeSwap(project: Project, id: string, fabric: FabricId, by: FabricId): Command {
  return {
    label: phrase('change the colourway {name}', { name: named(project, id) }),
    change: (draft) => {
      const colourway = known(draft, id);
      colourway.swaps = colourway.swaps.filter((swap) => swap.fabric !== fabric);
      if (by !== fabric) colourway.swaps.push({ fabric, by });
    },
  };
}

export function renameColourway(id: string, name: string): Command {
  return {
    label: phrase('rename the colourway {name}', { name }),
    change: (draft) => {
      known(draft, id).name = name;
    },
  };
}

export function removeColourway(project: Project, id: string): Command {
  return {
    label: phrase('remove the colourway {name}', { name: named(project, id) }),
    change: (draft) => {
      draft.colourways = draft.colourways.filter((one) => one.id !== id);
    },
  };
}

/** Makes the quilt on the wall in this colourway. Refused while a set is sewn: cloth once sewn stays what it is. */
export function wearColourway(project: Project, id: string): Command {
  return {
    label: phrase('make the quilt in {name}', { name: named(project, id) }),
    change: (draft) => {
      const sewn = draft.stripSets.find((set) => set.progress !== 'planned');
      if (sewn) {
        const say = 'Set {set} is sewn. Copy the quilt to make it in other cloth.';
        throw new Refusal('set-sewn', 'colourways', phrase(say, { set: sewn.label }));
      }
      const worn = inColourway(current(draft), current(known(draft, id)));
      draft.stripSets = worn.stripSets;
      draft.blocks = worn.blocks;
      draft.setting = worn.setting;
      draft.buying.backing.fabric = worn.buying.backing.fabric;
    },
  };
}

function known(draft: Project, id: string): Colourway {
  const colourway = draft.colourways.find((one) => one.id === id);
  if (!colourway) throw new Error(`editing colourways: no colourway ${id}`);
  return colourway;
}

function named(project: Project, id: string): string {
  return project.colourways.find((one) => one.id === id)?.name ?? '';
}
