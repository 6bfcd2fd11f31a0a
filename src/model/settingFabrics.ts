// Every fabric the setting names, with its place in the file and what it is for: for checks, lists of uses and exchanges.
import { type Phrase, phrase } from './phrase';
import type { FabricId, Setting } from './project';

export interface SettingFabric {
  /** Where it is written, under `setting`. */
  readonly path: string;
  readonly fabric: FabricId;
  /** What it is for, in a word or two: sashing, side triangles. */
  readonly part: Phrase;
  /** The same as a sentence with the fabric's name: "The sashing is of Night sky." */
  readonly use: (name: string) => Phrase;
  /** Whether any of it shows as the setting stands: sashing that lies nowhere does not. */
  readonly shows: boolean;
}

/** In the order of the file; one fabric may come several times. */
export function settingFabrics(setting: Setting): SettingFabric[] {
  const { layout, plain, cornerRule, sashing, borders, binding } = setting;
  const found: SettingFabric[] = [];
  const add = (path: string, fabric: FabricId, part: string, say: string, shows = true) =>
    found.push({
      path: `setting.${path}`,
      fabric,
      part: phrase(part),
      use: (name) => phrase(say, { name }),
      shows,
    });
  if (layout.kind === 'onPoint') {
    add('layout.sides', layout.sides, 'side triangles', 'The side triangles are of {name}.');
    add('layout.corners', layout.corners, 'setting corners', 'The setting corners are of {name}.');
  }
  if (plain) add('plain.fabric', plain.fabric, 'plain squares', 'The plain squares are of {name}.');
  add('cornerFabric', setting.cornerFabric, 'corners', 'The corner triangles are of {name}.');
  if (cornerRule)
    add(
      'cornerRule.fabric',
      cornerRule.fabric,
      'corners of some blocks',
      'Some corner triangles are of {name}.',
    );
  const lies = sashing.where !== 'none';
  add('sashing.fabric', sashing.fabric, 'sashing', 'The sashing is of {name}.', lies);
  if (sashing.cornerstones !== undefined) {
    add(
      'sashing.cornerstones',
      sashing.cornerstones,
      'cornerstones',
      'The cornerstones are of {name}.',
      lies,
    );
  }
  borders.forEach((border, index) => {
    add(
      `borders[${index}].fabric`,
      border.fabric,
      'border',
      'A border is of {name}.',
      border.keys === undefined,
    );
    if (border.corners?.kind === 'cornerstones') {
      add(
        `borders[${index}].corners.fabric`,
        border.corners.fabric,
        'cornerstones of a border',
        'The cornerstones of a border are of {name}.',
      );
    }
    border.keys?.forEach((key, at) => {
      add(
        `borders[${index}].keys[${at}].fabric`,
        key.fabric,
        'pieced border',
        'A pieced border has {name} in it.',
      );
    });
  });
  if (binding) add('binding.fabric', binding.fabric, 'binding', 'The binding is of {name}.');
  return found;
}

/** Changes every fabric of a draft of the setting in place. */
export function exchangeInSetting(setting: Setting, swapped: (fabric: FabricId) => FabricId): void {
  const { layout, plain, cornerRule, sashing, borders, binding } = setting;
  if (layout.kind === 'onPoint') {
    layout.sides = swapped(layout.sides);
    layout.corners = swapped(layout.corners);
  }
  for (const part of [plain, cornerRule, sashing, binding]) if (part) part.fabric = swapped(part.fabric);
  setting.cornerFabric = swapped(setting.cornerFabric);
  if (sashing.cornerstones !== undefined) sashing.cornerstones = swapped(sashing.cornerstones);
  for (const border of borders) {
    border.fabric = swapped(border.fabric);
    if (border.corners?.kind === 'cornerstones') border.corners.fabric = swapped(border.corners.fabric);
    for (const key of border.keys ?? []) key.fabric = swapped(key.fabric);
  }
}
