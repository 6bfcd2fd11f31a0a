// The schema of the buying choices: how cloth is sold and cut for this quilt, and what a kit costs. cutting/yardage and
// cutting/kits compute from it. Lengths are inches. Every entry has a usual value
// (in inches, whatever the quilt's unit), so that files older than the entry open.
import * as v from 'valibot';
import { USUAL } from './lengths';
import { fabricId, length } from './schemaParts';
import type { LengthUnit } from './units';

/** No price is higher. */
export const MOST_PRICE = 100_000;
const amount = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(MOST_PRICE));

/** The price of a yard, a metre or a fat quarter; null: not known. */
export const priceSchema = v.nullable(amount);

const MOST_SHRINKAGE = 15;

export const buyingSchema = v.strictObject({
  /** Cloth is bought by the yard or the metre; null: yards with inches, metres with centimetres. */
  soldBy: v.optional(v.nullable(v.picklist(['yard', 'metre'])), null),
  /** The per cent of its length that cloth loses in the wash. The usable width is measured after washing. */
  shrinkage: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(MOST_SHRINKAGE)), 0),
  /** Length lost in straightening the cut edge, once for each fabric. */
  straighten: v.optional(length(0, 12), 1),
  /** Fat quarters are bought where they are cheaper and every piece fits on them. */
  fatQuarters: v.optional(v.boolean(), true),
  /** Corner squares that just fit, or larger ones that are trimmed after sewing. */
  corners: v.optional(v.picklist(['fits', 'comfortable']), 'comfortable'),
  /** Pieces longer than the cloth is wide: joined from strips, or cut in one piece along the cloth. */
  longPieces: v.optional(v.picklist(['joined', 'whole']), 'joined'),
  /** Length of binding beyond the perimeter of the top, for joins and corners. */
  bindingExtra: v.optional(length(0, 60), 12),
  backing: v.optional(
    v.strictObject({
      /** Fabric of the backing; null: not chosen, so that it is bought apart from the fabrics of the quilt. */
      fabric: v.optional(v.nullable(fabricId), null),
      /** How far the backing reaches beyond the top on each side: 4 for long-arm quilting, 2 to 3 for a domestic machine. */
      overhang: v.optional(length(0, 12), 4),
      /** Usable width of the backing cloth; null: the same as of the other cloth. */
      width: v.optional(v.nullable(length(10, 130)), null),
      /** Seam allowance between the lengths of the backing. */
      seam: v.optional(length(0.25, 1), 0.5),
      /** The last width may be pieced from shorter lengths where that takes less cloth. */
      pieced: v.optional(v.boolean(), false),
      price: v.optional(priceSchema, null),
    }),
    {},
  ),
  kits: v.optional(
    v.strictObject({
      count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(1000)), 12),
      /** Cloth on a full bolt, inches. */
      bolt: v.optional(length(36, 4000), 540),
      /** Strips in one roll of precut strips. */
      stripsPerRoll: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(200)), 40),
      /** What a kit contains: every strip ready cut, or one length of each fabric. */
      cutAs: v.optional(v.picklist(['strips', 'lengths']), 'strips'),
      backing: v.optional(v.boolean(), false),
      /** The cost of a kit besides its cloth: pattern, bag, time. */
      extra: v.optional(amount, 0),
    }),
    {},
  ),
  /** Price of a yard or a metre (see soldBy) of every fabric without a price of its own. */
  price: v.optional(priceSchema, null),
  fatQuarterPrice: v.optional(priceSchema, null),
  /** The currency sign or letters, as text; nothing is converted. */
  currency: v.optional(v.pipe(v.string(), v.maxLength(6, 'a currency is at most 6 characters')), ''),
});

export type Buying = v.InferOutput<typeof buyingSchema>;

export type SellingUnit = NonNullable<Buying['soldBy']>;

/** Yards or metres: as chosen, else yards where the quilt is in inches. */
export function sellingUnit({ buying, preferences }: Pick<Sold, 'buying' | 'preferences'>): SellingUnit {
  return buying.soldBy ?? (preferences.unit === 'in' ? 'yard' : 'metre');
}

/** What has a price of a yard or a metre. */
interface WithPrice {
  price?: number | null;
}

interface Sold {
  readonly buying: Buying;
  readonly fabrics: readonly WithPrice[];
  readonly colourways: readonly { readonly cloth?: readonly WithPrice[] }[];
  readonly preferences: { readonly unit: LengthUnit };
}

/** All that may have a price of a yard or a metre, the price of all fabrics first; the made-up cloth of colourways is among it. */
export function soldByLength({ buying, fabrics, colourways }: Omit<Sold, 'preferences'>): WithPrice[] {
  return [buying, buying.backing, ...fabrics, ...colourways.flatMap(({ cloth }) => cloth ?? [])];
}

/**
 * Once there is a price, what it is for stays chosen: whoever looks at the quilt in the other unit would else read the price of a yard
 * as one of a metre, and that of a fat quarter as one of another length. Mutates the quilt.
 */
export function keepSoldBy(quilt: Sold): void {
  const { buying } = quilt;
  const prices = [buying.fatQuarterPrice, ...soldByLength(quilt).map((one) => one.price)];
  if (prices.some((price) => typeof price === 'number')) buying.soldBy = sellingUnit(quilt);
}

/** The buying choices of a new project in this unit. */
export function usualBuying(unit: LengthUnit = 'in'): Buying {
  const { straighten, bindingExtra, overhang, backingSeam, bolt } = USUAL[unit];
  return v.parse(buyingSchema, {
    straighten,
    bindingExtra,
    backing: { overhang: overhang.longArm, seam: backingSeam },
    kits: { bolt },
  });
}
