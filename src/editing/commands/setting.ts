// Commands on the setting (corners, sashing, borders) and on the project itself (name, notes, preferences).
import { current } from 'immer';
import { borderFabric } from '../../cloth/borderFabric';
import { phrase } from '../../model/phrase';
import type { Border, FabricId, Preferences, Project, Setting } from '../../model/project';
import type { Command } from '../apply';
import { keepSewnCorners } from './layout';

/** Changes where the sashing lies, its width or its fabric. */
export function changeSashing(to: Partial<Setting['sashing']>): Command {
  return {
    label: phrase('change the sashing'),
    change: (draft) => {
      Object.assign(draft.setting.sashing, to);
    },
  };
}

/** Changes the fabric of the quilt's corner triangles; corners that are sewn on keep theirs. */
export function changeCorners(fabric: FabricId): Command {
  return {
    label: phrase('change the corner triangles'),
    change: (draft) => {
      keepSewnCorners(draft);
      draft.setting.cornerFabric = fabric;
    },
  };
}

/** Adds an outermost border; without a fabric of its own, of one that is told apart from what it lies against. */
export function addBorder(border: Omit<Border, 'fabric'> & { readonly fabric?: FabricId }): Command {
  return {
    label: phrase('add a border'),
    change: (draft) => {
      draft.setting.borders.push({ ...border, fabric: border.fabric ?? borderFabric(current(draft)) });
    },
  };
}

/** Changes a border; `index` counts from 0, the innermost. */
export function changeBorder(index: number, to: Partial<Border>): Command {
  return {
    label: phrase('change border {border}', { border: index + 1 }),
    change: (draft) => {
      const border = draft.setting.borders[index];
      if (!border) throw new Error(`changeBorder: no border ${index}`);
      Object.assign(border, to);
    },
  };
}

/** Removes a border; `index` counts from 0, the innermost. */
export function removeBorder(index: number): Command {
  return {
    label: phrase('remove border {border}', { border: index + 1 }),
    change: (draft) => {
      draft.setting.borders.splice(index, 1);
    },
  };
}

/** Changes the name of the project. */
export function renameProject(name: string): Command {
  return {
    label: phrase('rename the quilt'),
    change: (draft) => {
      draft.name = name;
    },
  };
}

/** Changes the preferences, but for the unit, in which the project was drawn. `slide`: the change comes from a sliding control, whose steps are undone together. */
export function changePreferences(to: Partial<Omit<Preferences, 'unit'>>, slide = false): Command {
  const label = (): ReturnType<typeof phrase> => {
    if (to.wallLightness !== undefined) return phrase('change the wall background');
    if (to.lookalikes !== undefined) return phrase('change the look-alike limit');
    if (to.intent) return phrase('change how lights, darks and colours should lie');
    if (to.weights) return phrase('change how much each part of the score counts');
    if (to.shuffle) return phrase('change the shuffle options');
    return phrase('change the settings');
  };
  return {
    label: label(),
    ...(slide ? { slide: Object.keys(to).join(' ') } : {}),
    change: (draft: Project) => {
      Object.assign(draft.preferences, to);
    },
  };
}
