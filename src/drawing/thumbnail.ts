// A whole top for a picture of a few dozen pixels: its outlines by colour, prints in the colour of their ground, and of blocks in
// pictures what was read of them. Figures of prints
// would not be seen, and take long for many quilts.
import { type Outline, placed } from '../geometry/point';
import type { FabricId, Project } from '../model/project';
import type { Inches } from '../model/units';
import { absoluteOutline, drawProject } from './drawProject';

export interface Thumbnail {
  readonly width: Inches;
  readonly height: Inches;
  /** In quilt inches; #rrggbb. */
  readonly fills: readonly { readonly colour: string; readonly outlines: readonly Outline[] }[];
}

/** Colour of places without cloth, as in the picture (svg.ts). */
const BARE = '#c8c6c2';

/** The picture; what has one colour is one fill. */
export function thumbnailOf(project: Project): Thumbnail {
  const drawing = drawProject(project);
  const colours = new Map(project.fabrics.map(({ id, colour }) => [id, colour]));
  const fills = new Map<string, Outline[]>();
  const add = (fabric: FabricId | null, outline: Outline) => {
    const colour = (fabric === null ? undefined : colours.get(fabric)) ?? BARE;
    const outlines = fills.get(colour) ?? [];
    outlines.push(outline);
    fills.set(colour, outlines);
  };
  if (drawing.blocks.length === 0) {
    // Nothing hangs: the fabrics side by side say more than empty places.
    const cloths = project.fabrics.filter((fabric) => !fabric.background);
    cloths.forEach(({ id }, at) => {
      const [left, right] = [at, at + 1].map((edge) => (edge * drawing.width) / cloths.length);
      add(id, [{ x: left!, y: 0 }, { x: right!, y: 0 }, { x: right!, y: drawing.height }, { x: left!, y: drawing.height }]); // biome-ignore format: a box
    });
    if (cloths.length > 0) return pictureOf(drawing, fills);
  }
  for (const { fabric, outline } of drawing.setting) add(fabric, outline);
  for (const { box } of drawing.emptyCells) {
    const [w, h] = [box.width / 2, box.height / 2];
    const corners = [{ x: -w, y: -h }, { x: w, y: -h }, { x: w, y: h }, { x: -w, y: h }]; // biome-ignore format: a box
    add(null, placed(corners, 0, { x: box.x + w, y: box.y + h }, drawing.tilt));
  }
  for (const hung of drawing.blocks)
    for (const piece of hung.pieces)
      if (piece.picture === undefined) add(piece.fabric, absoluteOutline(hung, piece));
  return pictureOf(drawing, fills);
}

function pictureOf(
  { width, height }: { readonly width: Inches; readonly height: Inches },
  fills: ReadonlyMap<string, Outline[]>,
): Thumbnail {
  return { width, height, fills: Array.from(fills, ([colour, outlines]) => ({ colour, outlines })) };
}
