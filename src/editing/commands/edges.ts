// Commands on what frames the blocks: cornerstones and single gaps of the sashing, the corners, ends and pieces of a border,
// and the binding.
import { phrase } from '../../model/phrase';
import type { Border, FabricId, Project, Setting } from '../../model/project';
import type { Inches } from '../../model/units';
import type { Command } from '../apply';

/** Puts squares of a fabric where the sashing crosses; null: whole strips instead. */
export function setCornerstones(fabric: FabricId | null): Command {
  return {
    label: fabric === null ? phrase('remove the cornerstones') : phrase('add cornerstones'),
    change: ({ setting: { sashing } }) => {
      if (fabric === null) delete sashing.cornerstones;
      else sashing.cornerstones = fabric;
    },
  };
}

/** Gives the sashing after a column or row (counted from 1) a finished width of its own; null: the width of the others. */
export function setGap(which: 'columnGaps' | 'rowGaps', after: number, width: Inches | null): Command {
  const say =
    which === 'columnGaps'
      ? 'change the sashing after column {after}'
      : 'change the sashing after row {after}';
  return {
    label: phrase(say, { after }),
    change: ({ setting: { sashing } }) => {
      const others = (sashing[which] ?? []).filter((gap) => gap.after !== after);
      const gaps = width === null ? others : [...others, { after, width }];
      if (gaps.length === 0) delete sashing[which];
      else sashing[which] = gaps.toSorted((one, other) => one.after - other.after);
    },
  };
}

/** Sets how the corners of a border are made: mitred, cornerstones, or butted (null). Mitring makes a pieced border plain. */
export function setBorderCorners(index: number, corners: Border['corners'] | null): Command {
  return {
    label: phrase('change the corners of border {border}', { border: index + 1 }),
    change: (draft) => {
      const border = borderAt(draft, index);
      if (corners) border.corners = corners;
      else delete border.corners;
      if (corners?.kind === 'mitred') delete border.keys;
    },
  };
}

/** Pieces a border from leftover strips (cutting/top/piecedBorder), or makes it plain again (null). */
export function pieceBorder(index: number, keys: Border['keys'] | null): Command {
  return {
    label: keys
      ? phrase('piece border {border} from left-over strips', { border: index + 1 })
      : phrase('make border {border} plain', { border: index + 1 }),
    change: (draft) => {
      const border = borderAt(draft, index);
      if (keys) border.keys = keys;
      else delete border.keys;
      if (keys && border.corners?.kind === 'mitred') delete border.corners;
    },
  };
}

/**
 * Adds a plain border inside border `inside` (index from 0), so that whole pieces fit in the outer one. Finished widths:
 * `side` at the sides, `end` at the top and bottom.
 */
export function addSpacer(inside: number, fabric: FabricId, side: Inches, end: Inches): Command {
  return {
    label: phrase('add a spacer inside border {border}', { border: inside + 1 }),
    change: (draft) => {
      const spacer: Border = { fabric, width: side };
      if (Math.abs(end - side) > 1e-9) spacer.ends = end;
      draft.setting.borders.splice(inside, 0, spacer);
    },
  };
}

/** Gives a border the same width on all four sides. */
export function evenBorder(index: number): Command {
  return {
    label: phrase('make border {border} even', { border: index + 1 }),
    change: (draft) => {
      delete borderAt(draft, index).ends;
    },
  };
}

/** Chooses fabric and width of the binding; null: not chosen. */
export function setBinding(binding: Setting['binding']): Command {
  return {
    label: binding ? phrase('choose the binding') : phrase('remove the binding'),
    change: (draft) => {
      draft.setting.binding = binding;
    },
  };
}

function borderAt(draft: Project, index: number): Border {
  const border = draft.setting.borders[index];
  if (!border) throw new Error(`borderAt: no border ${index}`);
  return border;
}
