// Blocks in pictures, as other programs draw them: the picture lies over the block's box, turned with it and tilted on point, and
// nothing else of the top is any different. What was read of the block stays under it.
import { beforeAll, describe, expect, it } from 'vitest';
import { patternKit } from '../../src/cli/pattern';
import { mergedPaths, pictureOver, seamPath } from '../../src/drawing/blockPaths';
import type { Drawing } from '../../src/drawing/drawing';
import { drawBlock, drawProject } from '../../src/drawing/drawProject';
import { clothMarks, topFigure } from '../../src/drawing/pattern/clothMarks';
import type { Mark } from '../../src/drawing/pattern/page';
import { pageShapes } from '../../src/drawing/pattern/pageShapes';
import { PdfSheets } from '../../src/drawing/pattern/pdf/pdfSheets';
import { dataHrefs } from '../../src/drawing/photos';
import { drawingToSvg } from '../../src/drawing/svg';
import { thumbnailOf } from '../../src/drawing/thumbnail';
import type { PictureId, Pictures } from '../../src/model/picture/picture';
import type { Project } from '../../src/model/project';
import { cellCount } from '../../src/model/wallCells';
import { scrappyTop } from '../balance/tops';
import { withPictures, withSewn } from '../geometry/pictured';
import { keptPicture } from '../model/picture/images';
import { lookAtPdf, lookAtSvg } from './lookAt';
import { readSvg } from './readSvg';

/** Red grows to the right of the picture and green downwards, so that a colour tells its place in it. */
let picture: PictureId;
let pictures: Pictures;
beforeAll(async () => {
  const kept = await keptPicture({ kind: 'png', width: 64, height: 64, at: (x, y) => [x * 4, y * 4, 200] });
  picture = kept[0];
  pictures = new Map([kept]);
});

const MASK = 0b0110101;
const SIDES = [6, 8, 10, 12] as const;

/** A top of which some blocks are pictures, with a border; on point where that can be. */
function mixed(perBlock: (typeof SIDES)[number], onPoint: boolean): { project: Project; pieced: Project } {
  const top = scrappyTop({ rows: 2, columns: 4, seed: perBlock, perBlock });
  top.setting.borders = [{ fabric: 'c2', width: 2 }];
  if (onPoint) {
    top.setting.layout = { kind: 'onPoint', sides: 'c4', corners: 'c5' };
    const cells = cellCount(2, 4, top.setting.layout);
    top.wall.cells = Array.from({ length: cells }, (_, at) => top.wall.cells[at] ?? null);
  }
  const project = withPictures(top, MASK);
  for (const block of project.blocks) if (block.kind === 'pictured') block.picture = picture;
  return { project, pieced: withSewn(top, MASK) };
}

/** Places over the box of every block, as shares of it from the upper left, with where they are in quilt inches. */
function places({ block, blocks }: Drawing) {
  return blocks.flatMap((hung) => {
    const angle = ((hung.quarters * 90 + hung.tilt) * Math.PI) / 180;
    return [0.04, 0.3, 0.55, 0.96].flatMap((u) =>
      [0.05, 0.4, 0.7, 0.95].map((v) => {
        const [x, y] = [(u - 0.5) * block.width, (v - 0.5) * block.height];
        return {
          hung,
          u,
          v,
          x: hung.centre.x + x * Math.cos(angle) - y * Math.sin(angle),
          y: hung.centre.y + x * Math.sin(angle) + y * Math.cos(angle),
        };
      }),
    );
  });
}

function expectPictured([red, green, blue]: readonly number[], u: number, v: number): void {
  expect(Math.abs(red! - u * 256)).toBeLessThan(20);
  expect(Math.abs(green! - v * 256)).toBeLessThan(20);
  expect(Math.abs(blue! - 200)).toBeLessThan(20);
}

describe.each(SIDES.flatMap((perBlock) => (perBlock % 4 === 0 ? [[perBlock, false], [perBlock, true]] : [[perBlock, false]]) as [typeof perBlock, boolean][]))(
  'blocks of %i wedges, on point: %s',
  (perBlock, onPoint) => {
    it('lie as pictures over their boxes in an SVG, and change nothing else', () => {
      const { project, pieced } = mixed(perBlock, onPoint);
      const drawing = drawProject(project);
      const look = lookAtSvg(drawingToSvg(drawing, { hrefOf: dataHrefs(pictures) }), 12);
      const unpictured = lookAtSvg(drawingToSvg(drawProject(pieced)), 12);
      const isPicture = (id: string) => project.blocks.some((block) => block.id === id && block.kind === 'pictured');
      let seen = 0;
      for (const { hung, u, v, x, y } of places(drawing)) {
        if (isPicture(hung.block)) {
          seen += 1;
          expectPictured(look(x, y), u, v);
        } else expect(look(x, y)).toEqual(unpictured(x, y));
      }
      expect(seen).toBeGreaterThanOrEqual(16 * 4);
      expect(look(1, 1)).toEqual(unpictured(1, 1));
    });

    it('keep all that was read of them under the picture, for hands and words', () => {
      const { project, pieced } = mixed(perBlock, onPoint);
      const [now, before] = [project, pieced].map((one) => readSvg(drawingToSvg(drawProject(one), { hrefOf: dataHrefs(pictures) })).polygons);
      expect(now!.length).toBe(before!.length);
      const bare = (polygons: typeof now) => polygons!.map((one) => ({ ...one, points: [] }));
      expect(bare(now)).toEqual(bare(before));
      // Without the picture what was read is drawn.
      expect(drawingToSvg(drawProject(project))).not.toContain('<image');
    });

    it('are painted so in a PDF, and named so for the screen', async () => {
      const { project } = mixed(perBlock, onPoint);
      const drawing = drawProject(project);
      const figure = topFigure(drawing, 0.1, { fabrics: new Map(project.fabrics.map((fabric) => [fabric.id, fabric])) } as never);
      // Upright, as all paper of the pattern is.
      const paper = { width: figure.width, height: Math.max(figure.width, figure.height) + 1 };
      const page = { parts: ['Top'], marks: figure.marks };
      const sheets = new PdfSheets(kit, paper, pictures);
      sheets.paint(page);
      const bytes = new Uint8Array(sheets.bytes('Top'));
      const look = await lookAtPdf(bytes);
      const pictured = new Set(project.blocks.filter(({ kind }) => kind === 'pictured').map(({ id }) => id));
      for (const { hung, u, v, x, y } of places(drawing)) {
        if (pictured.has(hung.block)) expectPictured(look(x * 0.1, y * 0.1), u, v);
      }
      const images = pageShapes(page, paper, 'top').shapes.flatMap((shape) => (shape.kind === 'image' ? [shape] : []));
      expect(images.map((shape) => shape.picture)).toEqual(
        drawing.blocks.filter((hung) => pictured.has(hung.block)).map(() => picture),
      );
      drawing.blocks.filter((hung) => pictured.has(hung.block)).forEach(({ centre, quarters, tilt }, at) => {
        expect(images[at]!.transform).toMatch(new RegExp(`rotate\\(${(quarters * 90 + tilt) % 360}\\)$`));
        expect(Number(/translate\(([\d.]+)/.exec(images[at]!.transform)![1])).toBeCloseTo(centre.x * 7.2, 2);
      });
    });
  },
); // biome-ignore format: long lines

const kit = await patternKit();

describe('a block in a picture by itself', () => {
  it('has its picture last, the size of its box, no seam round it, and none where it is pieced', () => {
    const { project, pieced } = mixed(8, false);
    const block = project.blocks[0]!;
    const pieces = drawBlock(project, block);
    const own = drawBlock(pieced, pieced.blocks[0]!);
    const { width, height } = drawProject(project).block;
    expect(pictureOver(pieces)).toEqual({ picture, box: { x: -width / 2, y: -height / 2, width, height } });
    expect(pictureOver(own)).toBeNull();
    expect(pieces.length).toBe(own.length + 1);
    expect(seamPath(pieces).split('M').length).toBe(seamPath(own).split('M').length);
    const fabrics = (of: typeof pieces) => new Set(mergedPaths(of, project.fabrics).map(({ fabric }) => fabric));
    expect(fabrics(pieces)).toEqual(fabrics(own));
  }); // biome-ignore format: short

  it('is drawn anew when its picture is another, and not otherwise', () => {
    const { project } = mixed(8, false);
    const [first] = drawProject(project).blocks;
    expect(drawProject({ ...project }).blocks[0]).toBe(first);
    const blocks = project.blocks.map((block) =>
      block.kind === 'pictured' ? { ...block, picture: '0'.repeat(64) } : block,
    );
    expect(drawProject({ ...project, blocks }).blocks[0]!.pieces.at(-1)!.picture).toBe('0'.repeat(64));
  });

  it('has a mark on the page beside those of its pieces', () => {
    const { project } = mixed(8, false);
    const fabrics = new Map(project.fabrics.map((fabric) => [fabric.id, fabric]));
    const marks = clothMarks(drawBlock(project, project.blocks[0]!), 0.5, { fabrics } as never);
    const last = marks.at(-1) as Extract<Mark, { kind: 'picture' }>;
    expect(last).toMatchObject({ kind: 'picture', picture, centre: { x: 0, y: 0 }, turn: 0 });
    expect(last.width).toBeCloseTo(drawProject(project).block.width / 2, 9);
  });

  it('is known by its colours as read in a thumbnail', () => {
    const { project, pieced } = mixed(8, false);
    const colours = (one: Project) => thumbnailOf(one).fills.map(({ colour, outlines }) => `${colour} ${outlines.length}`).sort();
    expect(colours(project)).toEqual(colours(pieced));
  }); // biome-ignore format: short
});
