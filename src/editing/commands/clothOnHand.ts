// Commands on cloth on hand that is not cut into strips yet: yardage, fat quarters, precut strips, remnants.
import { findFabric, freshId } from '../../model/find';
import { counted, phrase } from '../../model/phrase';
import type { ClothOnHand, Project, StripOnHand } from '../../model/project';
import { type Command, Refusal } from '../apply';

/** Adds cloth on hand; pieces of one fabric, kind and size share a row. */
export function addCloth(project: Project, cloth: Omit<ClothOnHand, 'id'>): Command {
  return {
    label: phrase('add {name} to the fabric on hand', { name: nameOf(project, cloth.fabric) }),
    change: (draft) => {
      const same = draft.clothOnHand.find((one) => alike(one, cloth));
      if (same) same.count += cloth.count;
      else draft.clothOnHand.push({ ...cloth, id: freshId('c', draft.clothOnHand) });
    },
  };
}

/** Changes fabric, kind, size or number of one row of cloth on hand. */
export function changeCloth(project: Project, id: string, to: Partial<Omit<ClothOnHand, 'id'>>): Command {
  const fabric = to.fabric ?? project.clothOnHand.find((one) => one.id === id)?.fabric ?? '';
  return {
    label: phrase('change {name} on hand', { name: nameOf(project, fabric) }),
    change: (draft) => {
      const cloth = draft.clothOnHand.find((one) => one.id === id);
      if (!cloth) throw new Error(`changeCloth: no cloth ${id}`);
      Object.assign(cloth, to);
    },
  };
}

/** Takes one row of cloth off the list. */
export function removeCloth(project: Project, id: string): Command {
  const fabric = project.clothOnHand.find((one) => one.id === id)?.fabric ?? '';
  return {
    label: phrase('remove {name} from the fabric on hand', { name: nameOf(project, fabric) }),
    change: (draft) => {
      draft.clothOnHand = draft.clothOnHand.filter((one) => one.id !== id);
    },
  };
}

/** The lists of cloth and strips on hand after cutting. */
export interface CutTable {
  readonly clothOnHand: readonly ClothOnHand[];
  readonly stripsOnHand: readonly StripOnHand[];
  /** Number of strips cut. */
  readonly cut: number;
}

/**
 * Cuts cloth into strips: replaces the lists of cloth and strips on hand. Refused when the lists have changed since the plan
 * was made.
 */
export function cutFromCloth(project: Project, after: CutTable): Command {
  return {
    label: counted(after.cut, 'cut 1 strip from the fabric', 'cut {count} strips from the fabric'),
    change: (draft) => {
      const known = draft.clothOnHand.length === project.clothOnHand.length;
      if (!known || draft.stripsOnHand.length !== project.stripsOnHand.length) {
        throw new Refusal(
          'cloth-changed',
          'clothOnHand',
          phrase('The fabric on hand has changed meanwhile.'),
        );
      }
      draft.clothOnHand = after.clothOnHand.map((cloth) => ({ ...cloth }));
      draft.stripsOnHand = after.stripsOnHand.map((strips) => ({ ...strips }));
    },
  };
}

function alike(one: ClothOnHand, other: Omit<ClothOnHand, 'id'>): boolean {
  return (
    one.fabric === other.fabric &&
    one.kind === other.kind &&
    Math.abs(one.stripLength - other.stripLength) < 1e-9 &&
    Math.abs(one.depth - other.depth) < 1e-9
  );
}

function nameOf(project: Project, fabric: string): string {
  return findFabric(project, fabric)?.name ?? '';
}
