// The schema of the setting: layout, corners, sashing, borders and binding. Lengths are inches and finished, unless called
// cut. Entries newer than the first files have a usual value or may be missing, so that older files open unchanged.
import * as v from 'valibot';
import { fabricId, length, list } from './schemaParts';

/** One piece of a pieced border, cut across a leftover strip. `width` is the strip's cut width; it runs along the border. */
const keySchema = v.strictObject({ fabric: fabricId, width: length(0.25, 60) });

/** Spare length at each end of a mitred border (common practice, no source). */
export const USUAL_MITRE_SPARE = 2;

const borderSchema = v.strictObject({
  fabric: fabricId,
  width: length(0.25, 30),
  /** Finished width at the top and bottom, where it differs from the sides: a spacer that makes a pieced border fit. */
  ends: v.exactOptional(length(0.25, 30)),
  /** How the border's corners are made; butted unless given. */
  corners: v.exactOptional(
    v.variant('kind', [
      /** `spare`: extra length at each end, trimmed once the mitre is sewn; USUAL_MITRE_SPARE unless given. */
      v.strictObject({ kind: v.literal('mitred'), spare: v.exactOptional(length(0, 12)) }),
      v.strictObject({ kind: v.literal('cornerstones'), fabric: fabricId }),
    ]),
  ),
  /** The pieces of a pieced border, clockwise from the top left, repeated as often as needed. Plain unless given. */
  keys: v.exactOptional(list(keySchema, 2_000, 1)),
});

/** Gaps whose sashing has a width of its own. `after` is the number of the column (row) before the gap, from 1 at the left (top). */
const gaps = v.exactOptional(
  list(
    v.strictObject({
      after: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(39)),
      width: length(0.25, 12),
    }),
    39,
  ),
);

export const settingSchema = v.strictObject({
  /** Straight, or on point: blocks turned by 45° with setting triangles along the sides and in the corners of the top. */
  layout: v.variant('kind', [
    v.strictObject({ kind: v.literal('straight') }),
    v.strictObject({ kind: v.literal('onPoint'), sides: fabricId, corners: fabricId }),
  ]),
  /**
   * Plain squares of one fabric in every other cell: 'first' is the first, third … cell of the top row (on point: the
   * rows × columns), 'second' the second, fourth … (on point: the cells in between). Null: none.
   */
  plain: v.optional(
    v.nullable(v.strictObject({ fabric: fabricId, cells: v.picklist(['first', 'second']) })),
    null,
  ),
  /** Fabric of the corner triangles. */
  cornerFabric: fabricId,
  /**
   * A second corner fabric, for the blocks along the edge of the top or for every other block. A block's own corner fabric
   * overrides the rule.
   */
  cornerRule: v.optional(
    v.nullable(v.strictObject({ kind: v.picklist(['edge', 'checkerboard']), fabric: fabricId })),
    null,
  ),
  sashing: v.strictObject({
    /** On point sashing lies round every block ('around') or nowhere. */
    where: v.picklist(['none', 'between', 'around']),
    /** Finished width. */
    width: length(0.25, 12),
    fabric: fabricId,
    /** Fabric of the squares where the sashing crosses; whole strips between the rows unless given. */
    cornerstones: v.exactOptional(fabricId),
    /** Gaps of another width; only in the straight setting. */
    columnGaps: gaps,
    rowGaps: gaps,
  }),
  /** From the inside out. */
  borders: list(borderSchema, 12),
  /** Fabric and cut width of the double binding; null: not chosen yet. */
  binding: v.optional(v.nullable(v.strictObject({ fabric: fabricId, cutWidth: length(1, 6) })), null),
});
