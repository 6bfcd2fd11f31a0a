// Commands on colourways: versions of the same quilt in other cloth.
import { current } from 'immer';
import { keepSoldBy } from '../../model/buying';
import { clothWorn, exchangeForColourway, withoutCloth } from '../../model/colourway';
import { freshId } from '../../model/find';
import { phrase } from '../../model/phrase';
import {
  type Colourway,
  type Fabric,
  MOST_COLOURWAYS,
  MOST_FABRICS,
  type Project,
} from '../../model/project';
import { type Command, Refusal } from '../apply';

/** Adds a colourway with the given swaps and the made-up cloth that they need. */
export function addColourway(
  name: string,
  swaps: Colourway['swaps'],
  cloth: readonly Fabric[] = [],
): Command {
  return {
    label: phrase('add the colourway {name}', { name }),
    change: (draft) => {
      if (draft.colourways.length >= MOST_COLOURWAYS) {
        const say = 'A quilt holds at most {most} colourways. Remove one first.';
        throw new Refusal('too-many-colourways', 'colourways', phrase(say, { most: MOST_COLOURWAYS }));
      }
      draft.colourways.push({
        id: freshId('c', draft.colourways),
        name,
        swaps: swaps.map((swap) => ({ ...swap })),
        ...(cloth.length > 0 ? { cloth: [...cloth] } : {}),
      });
      keepSoldBy(draft);
    },
  };
}

/** Changes the swaps of some fabrics; a fabric swapped for itself has no swap any more. Other swaps do not change. */
export function changeSwaps(project: Project, id: string, swaps: Colourway['swaps']): Command {
  return {
    label: phrase('change the colourway {name}', { name: named(project, id) }),
    change: (draft) => {
      const colourway = known(draft, id);
      const changed = new Set(swaps.map((swap) => swap.fabric));
      colourway.swaps = [
        ...colourway.swaps.filter((swap) => !changed.has(swap.fabric)),
        ...swaps.filter((swap) => swap.by !== swap.fabric),
      ];
    },
  };
}

/** Changes the name of a colourway. */
export function renameColourway(id: string, name: string): Command {
  return {
    label: phrase('rename the colourway {name}', { name }),
    change: (draft) => {
      known(draft, id).name = name;
    },
  };
}

/** Removes a colourway and its made-up cloth. */
export function removeColourway(project: Project, id: string): Command {
  return {
    label: phrase('remove the colourway {name}', { name: named(project, id) }),
    change: (draft) => {
      draft.colourways = draft.colourways.filter((one) => one.id !== id);
    },
  };
}

/** Moves the made-up cloth of a colourway to the quilt's fabrics, where it can be named and changed like any other. */
export function listClothOf(project: Project, id: string): Command {
  return {
    label: phrase('add the fabrics of {name} to the quilt', { name: named(project, id) }),
    change: (draft) => {
      const { cloth = [] } = current(known(draft, id));
      joinFabrics(draft, id, cloth);
    },
  };
}

/**
 * Changes the quilt itself to this colourway; the colourway's made-up cloth joins the fabrics. Refused while a set is sewn,
 * because sewn cloth cannot change.
 */
export function wearColourway(project: Project, id: string): Command {
  return {
    label: phrase('use the colourway {name}', { name: named(project, id) }),
    change: (draft) => {
      const sewn = draft.stripSets.find((set) => set.progress !== 'planned');
      if (sewn) {
        const say = 'Set {set} is sewn. Duplicate the quilt to make it in other fabrics.';
        throw new Refusal('set-sewn', 'colourways', phrase(say, { set: sewn.label }));
      }
      const colourway = current(known(draft, id));
      joinFabrics(draft, id, clothWorn(colourway));
      exchangeForColourway(draft, colourway);
    },
  };
}

/** Moves made-up cloth from a colourway to the quilt's fabrics. */
function joinFabrics(draft: Project, id: string, cloth: readonly Fabric[]): void {
  if (draft.fabrics.length + cloth.length > MOST_FABRICS) {
    const say = 'The list would come to more than {most} fabrics. Remove some that nothing uses first.';
    throw new Refusal('too-many-fabrics', 'fabrics', phrase(say, { most: MOST_FABRICS }));
  }
  draft.fabrics.push(...cloth);
  const left = withoutCloth(current(known(draft, id)), cloth);
  draft.colourways = draft.colourways.map((one) => (one.id === id ? left : one));
}

function known(draft: Project, id: string): Colourway {
  const colourway = draft.colourways.find((one) => one.id === id);
  if (!colourway) throw new Error(`editing colourways: no colourway ${id}`);
  return colourway;
}

function named(project: Project, id: string): string {
  return project.colourways.find((one) => one.id === id)?.name ?? '';
}
