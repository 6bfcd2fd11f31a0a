// The project document: one plain JSON value, its schema and the types inferred from it. Lengths are inches, finished
// sizes unless called cut. Meaning across parts (does this fabric exist?) is checked in check.ts, versions in reading/migrate.ts.
import * as v from 'valibot';
import { buyingSchema, priceSchema } from './buying';
import { LONGEST_NAME } from './name';
import { fabricId, id, length, list, pictureId } from './schemaParts';
import { settingSchema } from './setting';

export const CURRENT_VERSION = 1;

/** The most colourways of a quilt. */
export const MOST_COLOURWAYS = 60;
/** The most rows and the most columns of a wall. */
const MOST_ROWS = 40;
/** The cells of such a wall on point (wallCells.ts). */
const MOST_CELLS = MOST_ROWS ** 2 + (MOST_ROWS - 1) ** 2;
/** The most fabrics of a quilt, and the most made-up fabrics of a colourway. */
export const MOST_FABRICS = 400;
/** The most rows of strips on hand, and the most pieces of one kind. */
export const MOST_STRIP_ROWS = 2_000;
export const MOST_OF_A_KIND = 10_000;
/** Cut widths and lengths of strips, inches. */
export const STRIP_WIDTH = { least: 0.25, most: 60 } as const;
export const STRIP_LENGTH = { least: 1, most: 4000 } as const;
/** The most blocks of a quilt. */
export const MOST_BLOCKS = 1_600;
/** The most strip sets of a quilt. */
export const MOST_SETS = 400;
/** The most strips of a set. */
export const MOST_STRIPS = 40;

const name = v.pipe(v.string(), v.maxLength(LONGEST_NAME, 'a name is at most 120 characters'));
const hex = v.pipe(v.string(), v.regex(/^#[0-9a-f]{6}$/i, 'a colour is written #rrggbb'));
const count = v.pipe(
  v.number(),
  v.integer('must be a whole number'),
  v.minValue(0),
  v.maxValue(MOST_OF_A_KIND),
);
/** Motifs the tool can draw as cloth; each is generated, see cloth/print/printTile.ts. */
export const PRINT_MOTIFS = [
  'dots', 'sprig', 'stripe', 'gingham', 'check', 'crosshatch', 'leaves', 'scales', 'ditsy', 'speckle', 'waves', 'stars',
] as const; // biome-ignore format: a table

/** Sides of a tile of photographed fabric, inches. */
export const PHOTO_TILE = { least: 0.125, most: 60 } as const;

const printSchema = v.strictObject({
  motif: v.picklist(PRINT_MOTIFS),
  /** Colours of the figures, strongest first; the ground is the fabric's colour. */
  inks: list(hex, 4, 1),
  /** One repeat of the print, inches. */
  repeat: length(0.125, 12),
  /** Angle of the print to the strip's length, degrees. */
  angle: v.pipe(v.number(), v.minValue(-180), v.maxValue(180)),
  seed: count,
});

/** How busy photographed fabric can be, L*; and the least distance at which its figures repeat, inches. */
export const MOST_SPREAD = 50;
export const LEAST_SCALE = 0.01;

/** One colour of photographed fabric, and its share of the surface. */
const colourShare = v.strictObject({ hex, share: v.pipe(v.number(), v.minValue(0), v.maxValue(1)) });

const photoSchema = v.strictObject({
  /** A tile that joins itself on all sides without a break, its top side up. */
  picture: pictureId,
  /** True size of the tile on the fabric, inches. */
  width: length(PHOTO_TILE.least, PHOTO_TILE.most),
  height: length(PHOTO_TILE.least, PHOTO_TILE.most),
  /** Angle of the tile's upper side to the strip's length, degrees. */
  angle: v.pipe(v.number(), v.minValue(-180), v.maxValue(180)),
  /** Its main colours, largest first; the fabric's colour is the mean of its light. */
  colours: v.pipe(
    v.array(v.unknown()),
    v.maxLength(8),
    v.minLength(1),
    v.array(colourShare),
    v.check(
      (colours) => Math.abs(colours.reduce((sum, { share }) => sum + share, 0) - 1) <= 1e-6,
      'the shares of the colours must sum to 1',
    ),
  ),
  /** How busy it is: the standard deviation of L* over the tile. */
  spread: v.pipe(v.number(), v.minValue(0), v.maxValue(MOST_SPREAD)),
  /** How far apart its figures repeat, inches; null where none do. */
  scale: v.nullable(length(LEAST_SCALE, PHOTO_TILE.most)),
});

export const fabricSchema = v.strictObject({
  id,
  name,
  /** The cloth's ground colour. */
  colour: hex,
  /** What the cloth looks like: a plain colour, a generated print, or a photograph of the fabric itself. */
  cloth: v.variant('kind', [
    v.strictObject({ kind: v.literal('plain') }),
    v.strictObject({ kind: v.literal('print'), print: printSchema }),
    v.strictObject({ kind: v.literal('photo'), photo: photoSchema }),
  ]),
  /** Background cloth (corners, sashing): where it meets itself there is no clash. */
  background: v.boolean(),
  /** Whether the print is directional, so that pieces are cut to keep it upright. Absent: it is not. */
  oneWay: v.exactOptional(v.boolean()),
  /** Price of a yard or a metre; absent: the price in `buying`, which holds for all fabrics. */
  price: v.exactOptional(priceSchema),
});

export const stripOnHandSchema = v.strictObject({
  id,
  fabric: fabricId,
  /** Cut width, and length along the strip. */
  width: length(STRIP_WIDTH.least, STRIP_WIDTH.most),
  length: length(STRIP_LENGTH.least, STRIP_LENGTH.most),
  count,
});

export const clothOnHandSchema = v.strictObject({
  id,
  fabric: fabricId,
  /** How the cloth was bought, as written in the file. It only names the piece: its two lengths decide what can be cut. */
  kind: v.picklist(['yardage', 'fat quarter', 'precut strips', 'remnant']),
  /** Length of the strips cut from it: the usable width of yardage, the long side of a fat quarter. */
  stripLength: length(1, 4000),
  /** Side along which strips are cut one after another: length of yardage, short side of a fat quarter, width of a precut strip. */
  depth: length(0.25, 4000),
  /** Number of such pieces. */
  count,
});

const stripSchema = v.strictObject({
  fabric: fabricId,
  width: length(0.25, 60),
  /** A locked strip keeps its place when its set is made anew. Absent: it is not locked. */
  locked: v.exactOptional(v.boolean()),
});

const SET_PROGRESS = ['planned', 'sewn', 'cut'] as const;

const stripSetSchema = v.strictObject({
  id,
  /** The letter of the set: A, B, … */
  label: v.pipe(v.string(), v.minLength(1), v.maxLength(4)),
  /** In sewing order; the first strip is the rim of tip-up wedges, the last of tip-down ones. */
  strips: list(stripSchema, MOST_STRIPS),
  /** Length after the ends are straightened, inches. */
  length: length(0, 4000),
  /** All seams are pressed towards the first or towards the last strip. */
  pressing: v.picklist(['first', 'last']),
  /** Which way the first wedge from the left is cut. */
  firstTip: v.picklist(['up', 'down']),
  progress: v.picklist(SET_PROGRESS),
  /** Number of wedges really cut, where it differs from the computed number; null: the computed number. */
  cut: v.nullable(v.strictObject({ up: count, down: count })),
  /** Making sets at random does not replace a locked set. */
  locked: v.boolean(),
});

export const WEDGE_COUNTS = [6, 8, 10, 12] as const;

const wedgeSchema = v.strictObject({
  /** Wedges to the block, N. */
  perBlock: v.picklist(WEDGE_COUNTS),
  /** From the trimmed tip to the base, as cut, inches. */
  cutHeight: length(1, 40),
  /** Seam allowance the strips are sewn with and the template is drawn with. */
  seam: length(0.0625, 1),
  /** Seam the wedges are joined with. */
  assemblySeam: length(0.0625, 1),
  /** Seam round the outside of the block. */
  outerSeam: length(0.0625, 1),
});

const placeSchema = v.strictObject({ set: id, tip: v.picklist(['up', 'down']) });

export const BLOCK_PROGRESS = ['planned', 'octagon', 'squared', 'joined'] as const;

/** The number of a block, as people see it. */
const blockNumber = v.pipe(count, v.minValue(1));

/** What every block has besides its id and number. */
const blockParts = {
  /** Corner fabric of this block; null: the quilt's. */
  cornerFabric: v.nullable(fabricId),
  /**
   * How many wedge steps clockwise of the top side place 1 lies. For N = 8: 0 puts corner triangles on places 2, 4, 6, 8;
   * 1 puts them on places 1, 3, 5, 7.
   */
  cornerShift: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(5)),
  progress: v.picklist(BLOCK_PROGRESS),
};

const piecedBlockSchema = v.strictObject({
  id,
  /** Pieced from wedges of the quilt's strip sets. */
  kind: v.literal('pieced'),
  number: blockNumber,
  /** N places clockwise; null is a place without a wedge yet. */
  places: list(v.nullable(placeSchema), 12),
  /** A photograph of it once it was sewn, and how many quarter turns clockwise it is turned there. */
  photo: v.optional(
    v.strictObject({
      picture: pictureId,
      turn: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(3)),
    }),
  ),
  ...blockParts,
});

/** What shows of one strip in a sewn wedge, as it was read from a picture or put right by hand. */
const shownBandSchema = v.strictObject({
  /** Null: it is not known. */
  fabric: v.nullable(fabricId),
  /** Inches from seam to seam along the middle of the wedge. */
  width: length(0.001, 60),
  /** How sure the reading is, 0 to 1; 1 once a person has said so. */
  sure: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
});

const picturedBlockSchema = v.strictObject({
  id,
  /** Sewn already, corners and all, and shown by its picture (geometry/asPieced.ts). */
  kind: v.literal('pictured'),
  number: blockNumber,
  /** The block alone, squared up, its top side up. */
  picture: pictureId,
  /** N wedges clockwise, the bands of each from the rim in. Nothing is known of a wedge without bands. */
  wedges: list(v.strictObject({ bands: list(shownBandSchema, MOST_STRIPS) }), 12),
  /** It takes no wedge from the quilt's strip sets. */
  places: v.optional(list(v.nullable(placeSchema), 0), []),
  ...blockParts,
});

const blockSchema = v.variant('kind', [piecedBlockSchema, picturedBlockSchema]);

/** A block on the wall. `turn` counts quarter turns clockwise (half turns where the block is not square). */
const cellSchema = v.strictObject({
  block: id,
  turn: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(3)),
  pinned: v.boolean(),
});

const wallSchema = v.strictObject({
  rows: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(MOST_ROWS)),
  columns: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(MOST_ROWS)),
  /**
   * Row by row from the top left; on point the rows × columns first, then the (rows − 1) × (columns − 1) in between, row by
   * row (model/wallCells). Null is an empty cell. Blocks in no cell are on the side table.
   */
  cells: list(v.nullable(cellSchema), MOST_CELLS),
});

/**
 * How values should lie, as written in the file; the screen has its own words. 'light to dark' runs from left to right.
 */
export const VALUE_INTENTS = ['scattered', 'light middle', 'dark middle', 'light to dark'] as const;
export const COLOUR_INTENTS = ['scattered', 'families together'] as const;

/** Weight of a term of the score, 0 to 6. */
const weight = v.pipe(v.number(), v.minValue(0), v.maxValue(6));

const preferencesSchema = v.strictObject({
  unit: v.picklist(['in', 'cm']),
  /** Lightness L* of the design wall, 0 to 100. */
  wallLightness: v.pipe(v.number(), v.minValue(0), v.maxValue(100)),
  /** Usable width of fabric, inches. */
  usableWidth: length(10, 120),
  /** Seed of the last sets or wedges chosen at random. */
  seed: count,
  /** ΔE00 at and above which two fabrics do not clash. */
  lookalikes: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(40)), 10),
  /** How values and colours should lie on the wall. */
  intent: v.optional(
    v.strictObject({ value: v.picklist(VALUE_INTENTS), colour: v.picklist(COLOUR_INTENTS) }),
    { value: 'scattered', colour: 'scattered' },
  ),
  /** Weight of each term of the score (balance/score/terms); the usual weights unless given. */
  weights: v.optional(
    v.strictObject({
      clashLength: weight,
      lookAlikes: weight,
      valueSpread: weight,
      colourSpread: weight,
      fabricSpread: weight,
      wholeTopWeight: weight,
    }),
  ),
  /** The shuffle's options: its seed, how long it searches, and what it may move. */
  shuffle: v.optional(
    v.strictObject({
      seed: count,
      effort: v.picklist(['short', 'longer', 'long']),
      scopes: v.strictObject({
        swap: v.boolean(),
        turn: v.boolean(),
        shiftCorners: v.boolean(),
        trade: v.boolean(),
        strips: v.boolean(),
      }),
    }),
  ),
});

const colourwaySchema = v.strictObject({
  id,
  name,
  /** Which fabric is exchanged for which; all others stay. */
  swaps: list(v.strictObject({ fabric: fabricId, by: fabricId }), MOST_FABRICS),
  /** Made-up cloth of this colourway, which is not among the quilt's fabrics. Absent: none. */
  cloth: v.exactOptional(list(fabricSchema, MOST_FABRICS)),
});

export const projectSchema = v.strictObject({
  format: v.literal('wedgewall-project'),
  version: v.literal(CURRENT_VERSION),
  id,
  name,
  notes: v.pipe(v.string(), v.maxLength(20_000)),
  fabrics: list(fabricSchema, MOST_FABRICS),
  stripsOnHand: list(stripOnHandSchema, MOST_STRIP_ROWS),
  /** Cloth not yet cut into strips. */
  clothOnHand: v.optional(list(clothOnHandSchema, 500), []),
  stripSets: list(stripSetSchema, MOST_SETS),
  wedge: wedgeSchema,
  blocks: list(blockSchema, MOST_BLOCKS),
  wall: wallSchema,
  setting: settingSchema,
  preferences: preferencesSchema,
  /** Versions of the same quilt in other cloth. */
  colourways: v.optional(list(colourwaySchema, MOST_COLOURWAYS), []),
  /** How cloth is bought and cut, and what a kit costs. */
  buying: v.optional(buyingSchema, {}),
});

export type Project = v.InferOutput<typeof projectSchema>;
export type Fabric = v.InferOutput<typeof fabricSchema>;
export type Print = v.InferOutput<typeof printSchema>;
export type Photo = v.InferOutput<typeof photoSchema>;
export type PrintMotif = Print['motif'];
export type StripOnHand = v.InferOutput<typeof stripOnHandSchema>;
export type ClothOnHand = v.InferOutput<typeof clothOnHandSchema>;
export type Strip = v.InferOutput<typeof stripSchema>;
export type StripSet = v.InferOutput<typeof stripSetSchema>;
export type WedgePlan = v.InferOutput<typeof wedgeSchema>;
export type Place = v.InferOutput<typeof placeSchema>;
export type Tip = Place['tip'];
export type PiecedBlock = v.InferOutput<typeof piecedBlockSchema>;
export type PicturedBlock = v.InferOutput<typeof picturedBlockSchema>;
export type ShownBand = v.InferOutput<typeof shownBandSchema>;
export type PicturedWedge = PicturedBlock['wedges'][number];
export type Block = v.InferOutput<typeof blockSchema>;
export type Cell = v.InferOutput<typeof cellSchema>;
export type Wall = v.InferOutput<typeof wallSchema>;
export type Setting = v.InferOutput<typeof settingSchema>;
export type Border = Setting['borders'][number];
export type Colourway = v.InferOutput<typeof colourwaySchema>;
export type Preferences = v.InferOutput<typeof preferencesSchema>;
export type FabricId = string;
export type BlockId = string;
export type StripSetId = string;
