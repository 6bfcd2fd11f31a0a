// Commands on fabrics and on the strips on hand.
import { everyCloth } from '../../model/colourway';
import { findFabric, freshId } from '../../model/find';
import { type Phrase, phrase } from '../../model/phrase';
import type { Fabric, FabricId, Project, StripOnHand } from '../../model/project';
import { exchangeInSetting, settingFabrics } from '../../model/settingFabrics';
import { type Command, Refusal } from '../apply';

/** Adds a fabric; its id is chosen here. */
export function addFabric(fabric: Omit<Fabric, 'id'>): Command {
  return {
    label: phrase('add the fabric {name}', { name: fabric.name }),
    change: (draft) => {
      draft.fabrics.push({ ...fabric, id: freshId('f', everyCloth(draft)) });
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

/** Removes a fabric that nothing uses; refuses, saying where it is used, otherwise. */
export function removeFabric(project: Project, id: FabricId): Command {
  const name = findFabric(project, id)?.name ?? '';
  return {
    label: phrase('remove the fabric {name}', { name }),
    change: (draft) => {
      const use = fabricUse(draft, id);
      if (use) {
        throw new Refusal(
          'fabric-in-use',
          'fabrics',
          phrase('{use} Put another cloth there first.', { use }),
        );
      }
      draft.fabrics = draft.fabrics.filter((fabric) => fabric.id !== id);
      draft.stripsOnHand = draft.stripsOnHand.filter((strip) => strip.fabric !== id);
      draft.clothOnHand = draft.clothOnHand.filter((cloth) => cloth.fabric !== id);
      for (const colourway of draft.colourways) {
        colourway.swaps = colourway.swaps.filter((swap) => swap.fabric !== id && swap.by !== id);
      }
    },
  };
}

/** Where a fabric is used in the quilt, in words; null when only strips and cloth on hand are of it. */
export function fabricUse(project: Project, id: FabricId): Phrase | null {
  const name = findFabric(project, id)?.name ?? '';
  const sets = project.stripSets.filter((set) => set.strips.some((strip) => strip.fabric === id));
  if (sets.length > 0) {
    const say =
      sets.length === 1 ? '{name} is sewn into strip set {sets}.' : '{name} is sewn into strip sets {sets}.';
    return phrase(say, {
      name,
      sets: { list: sets.map((set) => set.label) },
    });
  }
  const inSetting = settingFabrics(project.setting).find((one) => one.fabric === id);
  if (inSetting) return inSetting.use(name);
  const block = project.blocks.find((one) => one.cornerFabric === id);
  if (block) return phrase('The corners of block {block} are of {name}.', { name, block: block.number });
  return project.buying.backing.fabric === id ? phrase('The backing is of {name}.', { name }) : null;
}

/** Puts one fabric in another's place everywhere; the first one stays in the list, unused. */
export function replaceFabric(project: Project, id: FabricId, by: FabricId): Command {
  const named = { name: findFabric(project, id)?.name ?? '', other: findFabric(project, by)?.name ?? '' };
  return {
    label: phrase('put {other} in place of {name}', named),
    change: (draft) => {
      const swapped = (fabric: FabricId) => (fabric === id ? by : fabric);
      for (const set of draft.stripSets) {
        if (set.progress !== 'planned' && set.strips.some((strip) => strip.fabric === id)) {
          throw new Refusal(
            'set-sewn',
            'fabrics',
            phrase('Set {set} is sewn with {name}; it cannot be changed there.', {
              set: set.label,
              name: named.name,
            }),
          );
        }
        for (const strip of set.strips) strip.fabric = swapped(strip.fabric);
      }
      for (const block of draft.blocks)
        if (block.cornerFabric !== null) block.cornerFabric = swapped(block.cornerFabric);
      exchangeInSetting(draft.setting, swapped);
      const { backing } = draft.buying;
      if (backing.fabric !== null) backing.fabric = swapped(backing.fabric);
    },
  };
}

/** Adds strips on hand; equal fabric, width and length are counted together. */
export function addStrips(project: Project, strips: Omit<StripOnHand, 'id'>): Command {
  return {
    label: phrase('add strips of {name}', { name: findFabric(project, strips.fabric)?.name ?? '' }),
    change: (draft) => {
      const same = draft.stripsOnHand.find(
        (one) => one.fabric === strips.fabric && one.width === strips.width && one.length === strips.length,
      );
      if (same) same.count += strips.count;
      else draft.stripsOnHand.push({ ...strips, id: freshId('h', draft.stripsOnHand) });
    },
  };
}

export function changeStrips(id: string, to: Partial<Omit<StripOnHand, 'id'>>): Command {
  return {
    label: phrase('change strips on hand'),
    change: (draft) => {
      const strips = draft.stripsOnHand.find((one) => one.id === id);
      if (!strips) throw new Error(`changeStrips: no strips ${id}`);
      Object.assign(strips, to);
    },
  };
}

export function removeStrips(id: string): Command {
  return {
    label: phrase('remove strips on hand'),
    change: (draft) => {
      draft.stripsOnHand = draft.stripsOnHand.filter((one) => one.id !== id);
    },
  };
}
