// One table of every place in the document that names a fabric: its path, what the fabric is for, and how to write another
// fabric there. Checks, lists of uses, exchanges, colourways and removals derive from it, so that a new part of the document
// is added here and nowhere else. fabricUseWords.ts has the words for the uses.
import type { FabricId, Project } from './project';

interface Named<Of> {
  /** Path of the entry in the document: setting.borders[0].keys[2].fabric. */
  readonly path: string;
  readonly fabric: FabricId;
  /** The part of the document that is made of this fabric. */
  readonly of: Of;
  /** Writes another fabric in its place. Mutates the document: for drafts and copies. */
  readonly put: (fabric: FabricId) => void;
}

interface Row<Of> extends Named<Of> {
  /** Takes the whole row out of its list. Mutates the document: for drafts and copies. */
  readonly drop: () => void;
}

type Table = Readonly<Record<string, (project: Project) => readonly Named<unknown>[]>>;

/** Parts of the quilt itself. Their fabrics can be exchanged, and cannot be removed while they are used. */
const QUILT = {
  strip: ({ stripSets }) =>
    stripSets.flatMap((set, at) =>
      set.strips.flatMap((strip, index) => named(set, `stripSets[${at}].strips[${index}]`, strip, 'fabric')),
    ),
  sideTriangles: ({ setting: { layout } }) =>
    layout.kind === 'onPoint' ? named(layout, 'setting.layout', layout, 'sides') : [],
  settingCorners: ({ setting: { layout } }) =>
    layout.kind === 'onPoint' ? named(layout, 'setting.layout', layout, 'corners') : [],
  plainSquares: ({ setting: { plain } }) => (plain ? named(plain, 'setting.plain', plain, 'fabric') : []),
  corners: ({ setting }) => named(setting, 'setting', setting, 'cornerFabric'),
  cornersByRule: ({ setting: { cornerRule } }) =>
    cornerRule ? named(cornerRule, 'setting.cornerRule', cornerRule, 'fabric') : [],
  sashing: ({ setting: { sashing } }) => named(sashing, 'setting.sashing', sashing, 'fabric'),
  sashingCornerstones: ({ setting: { sashing } }) =>
    named(sashing, 'setting.sashing', sashing, 'cornerstones'),
  border: ({ setting: { borders } }) =>
    borders.flatMap((border, at) => named(border, `setting.borders[${at}]`, border, 'fabric')),
  borderCornerstones: ({ setting: { borders } }) =>
    borders.flatMap((border, at) =>
      border.corners?.kind === 'cornerstones'
        ? named(border, `setting.borders[${at}].corners`, border.corners, 'fabric')
        : [],
    ),
  borderPieces: ({ setting: { borders } }) =>
    borders.flatMap((border, at) =>
      (border.keys ?? []).flatMap((key, index) =>
        named(border, `setting.borders[${at}].keys[${index}]`, key, 'fabric'),
      ),
    ),
  binding: ({ setting: { binding } }) =>
    binding ? named(binding, 'setting.binding', binding, 'fabric') : [],
  blockCorners: ({ blocks }) =>
    blocks.flatMap((block, at) => named(block, `blocks[${at}]`, block, 'cornerFabric')),
  picturedBands: ({ blocks }) =>
    blocks.flatMap((block, at) =>
      block.kind === 'pictured'
        ? block.wedges.flatMap(({ bands }, wedge) =>
            bands.flatMap((band, index) =>
              named(block, `blocks[${at}].wedges[${wedge}].bands[${index}]`, band, 'fabric'),
            ),
          )
        : [],
    ),
  backing: ({ buying: { backing } }) => named(backing, 'buying.backing', backing, 'fabric'),
} satisfies Table;

/** Rows of the other lists. A row means nothing without its fabric, so it is removed with it. */
const LISTS = {
  stripsOnHand: ({ stripsOnHand }) => rows(stripsOnHand, 'stripsOnHand', 'fabric', (row) => row),
  clothOnHand: ({ clothOnHand }) => rows(clothOnHand, 'clothOnHand', 'fabric', (row) => row),
  exchanged: ({ colourways }) =>
    colourways.flatMap((colourway, at) =>
      rows(colourway.swaps, `colourways[${at}].swaps`, 'fabric', () => colourway),
    ),
  /** A fabric of the list, or made-up cloth of the colourway itself. */
  standIn: ({ colourways }) =>
    colourways.flatMap((colourway, at) =>
      rows(colourway.swaps, `colourways[${at}].swaps`, 'by', () => colourway),
    ),
} satisfies Readonly<Record<string, (project: Project) => readonly Row<unknown>[]>>;

/** A use with its purpose, the key of its table. */
type UseIn<T extends Table> = {
  [P in keyof T]: { readonly purpose: P } & ReturnType<T[P]>[number];
}[keyof T];
export type QuiltUse = UseIn<typeof QUILT>;
type RowUse = UseIn<typeof LISTS>;
export type FabricUse = QuiltUse | RowUse;
type ColourwayUse = Extract<RowUse, { purpose: 'exchanged' | 'standIn' }>;
/** What a fabric of the quilt is for. */
export type QuiltPurpose = QuiltUse['purpose'];

/** The uses of fabrics in the quilt itself, purpose by purpose. */
export function quiltUses(project: Project): QuiltUse[] {
  return usesIn(QUILT, project);
}

/** The uses in rows of the lists on hand and of colourways. */
export function rowUses(project: Project): RowUse[] {
  return usesIn(LISTS, project);
}

/** All uses: of the quilt, then of the other lists. */
export function fabricUses(project: Project): FabricUse[] {
  return [...quiltUses(project), ...rowUses(project)];
}

/** Whether a use shows in the quilt: not sashing that lies nowhere, nor the fabric of a border that is pieced from others. */
function shows(use: QuiltUse): boolean {
  switch (use.purpose) {
    case 'sashing':
    case 'sashingCornerstones':
      return use.of.where !== 'none';
    case 'border':
      return use.of.keys === undefined;
    default:
      return true;
  }
}

/** The uses in the quilt that show. */
export function usesThatShow(project: Project): QuiltUse[] {
  return quiltUses(project).filter(shows);
}

/** The rows of colourways that name a fabric: what is exchanged, and what replaces it. */
export function colourwayUses(project: Project): ColourwayUse[] {
  return rowUses(project).filter((use) => use.purpose === 'exchanged' || use.purpose === 'standIn');
}

/** Exchanges the fabrics of the quilt. Mutates `project`, a draft or copy, except for cloth on hand and colourways. */
export function exchangeFabrics(project: Project, swapped: (fabric: FabricId) => FabricId): void {
  putOthers(quiltUses(project), swapped);
}

/** Writes another fabric in these uses, wherever it is another. Mutates the document of the uses. */
export function putOthers(uses: readonly QuiltUse[], swapped: (fabric: FabricId) => FabricId): void {
  for (const use of uses) {
    const other = swapped(use.fabric);
    if (other !== use.fabric) use.put(other);
  }
}

function usesIn<T extends Table>(table: T, project: Project): UseIn<T>[] {
  return Object.entries(table).flatMap(([purpose, find]) =>
    find(project).map((found) => ({ purpose, ...found })),
  ) as UseIn<T>[];
}

/** The use under one key of a part of the document; empty where no fabric is chosen. */
function named<Of, K extends string>(
  of: Of,
  path: string,
  holder: { [key in K]?: FabricId | null },
  key: K,
): Named<Of>[] {
  const fabric = holder[key];
  if (typeof fabric !== 'string') return [];
  const put = (other: FabricId) => {
    holder[key] = other;
  };
  return [{ path: `${path}.${key}`, fabric, of, put }];
}

/** The uses under one key of every row of a list; `partOf` gives the part of the document a row belongs to. */
function rows<Of, K extends string, R extends { [key in K]?: FabricId | null }>(
  list: R[],
  path: string,
  key: K,
  partOf: (row: R) => Of,
): Row<Of>[] {
  return list.flatMap((row, index) =>
    named(partOf(row), `${path}[${index}]`, row, key).map((found) => ({
      ...found,
      drop: () => {
        // The row may have moved or gone since: a row that names one fabric twice is dropped twice.
        const at = list.indexOf(row);
        if (at >= 0) list.splice(at, 1);
      },
    })),
  );
}
