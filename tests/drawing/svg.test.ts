// The exported wall, read back from its text and measured without any of the drawing code.
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { drawProject } from '../../src/drawing/drawProject';
import { drawingToSvg } from '../../src/drawing/svg';
import type { Project } from '../../src/model/project';
import { readArea, readSvg } from './readSvg';
import { randomProject } from './samples';

function sashed(perBlock: 6 | 8 | 10 | 12): Project {
  const plain = randomProject(perBlock + 1, perBlock, 3, 2);
  const [background, ...others] = plain.fabrics;
  const print = { motif: 'stripe' as const, inks: ['#204060', '#aa5533'], repeat: 2, angle: 15, seed: 3 };
  const striped = { ...others[0]!, name: 'Stripe "A" <& co>', cloth: { kind: 'print' as const, print } };
  return {
    ...plain,
    fabrics: [background!, striped, ...others.slice(1)],
    setting: {
      ...plain.setting,
      sashing: { where: 'around', width: 1.5, fabric: 'a' },
      borders: [{ fabric: 'c', width: 2.25 }],
    },
  };
}

describe('an exported wall', () => {
  it('has real sizes: one unit is an inch, and a viewer that counts 96 pixels to the inch agrees', () => {
    const text = drawingToSvg(drawProject(sashed(8)));
    const svg = readSvg(text);
    // 2 × 14 + 3 × 1½ + 2 × 2¼ and 3 × 14 + 4 × 1½ + 2 × 2¼
    expect([svg.width, svg.height]).toEqual(['37in', '52.5in']);
    expect(svg.viewBox).toEqual([0, 0, 37, 52.5]);
    const viewer = new Resvg(text, { dpi: 96 });
    expect(viewer.width).toBeCloseTo(37 * 96, 3);
    expect(viewer.height).toBeCloseTo(52.5 * 96, 3);
  });

  it('can be measured: blocks, rims, sashing and borders come out as planned for every N', () => {
    for (const perBlock of [6, 8, 10, 12] as const) {
      const svg = readSvg(drawingToSvg(drawProject(sashed(perBlock))));
      const [, , width, height] = svg.viewBox as [number, number, number, number];
      const total = svg.polygons.reduce((sum, polygon) => sum + readArea(polygon.points), 0);
      expect(Math.abs(total - width * height)).toBeLessThan(1e-3);
      for (let block = 1; block <= 6; block += 1) {
        const own = svg.polygons.filter((polygon) => polygon.data['data-block'] === String(block));
        const ys = own.flatMap((polygon) => polygon.points.map(([, y]) => y));
        const places = new Set(own.flatMap((polygon) => polygon.data['data-place'] ?? []));
        expect(places.size).toBe(perBlock);
        expect(own.filter((polygon) => polygon.data['data-part'] === 'corner')).toHaveLength(4);
        if (perBlock === 8) expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(14, 5);
      }
      const border = svg.polygons.filter((polygon) => polygon.data['data-part'] === 'border');
      const borderArea = border.reduce((sum, polygon) => sum + readArea(polygon.points), 0);
      expect(borderArea).toBeCloseTo(width * height - (width - 4.5) * (height - 4.5), 3);
    }
  });

  it('has rims of 5.799 inches on a fourteen-inch octagon', () => {
    // Octagon side 0.41421 × 14 (any handbook table of regular polygons).
    const svg = readSvg(drawingToSvg(drawProject(randomProject(4, 8))));
    const rims = svg.polygons.filter((polygon) => polygon.data['data-band'] === '1');
    expect(rims).toHaveLength(8);
    for (const { points } of rims) {
      const [from, to] = points;
      expect(Math.hypot(to![0] - from![0], to![1] - from![1])).toBeCloseTo(0.41421 * 14, 3);
    }
  });

  it('names the fabric of every piece of cloth and none of a bare place', () => {
    const project = sashed(8);
    project.blocks[0]!.places[3] = null;
    const svg = readSvg(drawingToSvg(drawProject(project)));
    const ids = new Set(project.fabrics.map((fabric) => fabric.id));
    for (const { data } of svg.polygons) {
      expect(data['data-part'] ?? data['data-band']).toBeDefined();
      if (data['data-part'] === 'bare') expect(data).not.toHaveProperty('data-fabric');
      else expect(ids).toContain(data['data-fabric']);
    }
    expect(svg.polygons.some(({ data }) => data['data-part'] === 'bare' && data['data-place'] === '4')).toBe(
      true,
    );
  });

  it('defines every pattern it fills with, once', () => {
    const text = drawingToSvg(drawProject(sashed(12)));
    const used = new Set([...text.matchAll(/fill="url\(#([^)]+)\)"/g)].map((found) => found[1]!));
    const defined = [...text.matchAll(/<pattern id="([^"]+)"/g)].map((found) => found[1]!);
    expect(used.size).toBeGreaterThan(2);
    for (const id of used) expect(defined).toContain(id);
    expect(new Set(defined).size).toBe(defined.length);
  });

  it('turns a striped cloth with its strip: the stripes of place 3 run across those of place 1', () => {
    const plain = randomProject(1, 8);
    const black = { motif: 'stripe' as const, inks: ['#000000'], repeat: 1, angle: 0, seed: 1 };
    const striped = {
      ...plain.fabrics[1]!,
      colour: '#ffffff',
      cloth: { kind: 'print' as const, print: black },
    };
    const set = { ...plain.stripSets[0]!, id: 'one', label: 'O', strips: [{ fabric: 'a', width: 8 }] };
    const places = plain.blocks[0]!.places.map((_, at) => ({
      set: 'one',
      tip: at % 2 ? ('down' as const) : ('up' as const),
    }));
    const project: Project = {
      ...plain,
      fabrics: [plain.fabrics[0]!, striped],
      stripSets: [set],
      blocks: [{ ...plain.blocks[0]!, places, cornerShift: 0 }],
      wall: { rows: 1, columns: 1, cells: [{ block: 'b0', turn: 0, pinned: false }] },
    };
    const { pixels, width } = new Resvg(drawingToSvg(drawProject(project)), {
      fitTo: { mode: 'width', value: 1400 },
    }).render();
    const copy = Uint8Array.from(pixels);
    const shade = (x: number, y: number) => copy[(y * width + x) * 4]!;
    // A window 2 × 2 inches inside the top wedge (place 1) and one inside the right wedge (place 3).
    const edges = (x0: number, y0: number, across: boolean) => {
      let sum = 0;
      for (let step = 0; step < 200; step += 1) {
        for (let at = 0; at < 199; at += 1) {
          const [x, y] = across ? [x0 + at, y0 + step] : [x0 + step, y0 + at];
          sum += Math.abs(shade(x, y) - shade(across ? x + 1 : x, across ? y : y + 1));
        }
      }
      return sum;
    };
    expect(edges(600, 60, true)).toBeGreaterThan(5 * edges(600, 60, false));
    expect(edges(1140, 600, false)).toBeGreaterThan(5 * edges(1140, 600, true));
  });

  it('escapes names, describes itself, and is the same every time', () => {
    const drawing = drawProject(sashed(8));
    const text = drawingToSvg(drawing, { title: 'A <b> & "c"\u0000', caption: 'For <tea> & rest' });
    expect(text).toContain('<title id="title">A &lt;b&gt; &amp; &quot;c&quot;</title>');
    expect(text).toContain('Stripe &quot;A&quot; &lt;&amp; co&gt;');
    expect(text).toContain('For &lt;tea&gt; &amp; rest</text>');
    expect(text).toBe(drawingToSvg(drawing, { title: 'A <b> & "c"\u0000', caption: 'For <tea> & rest' }));
    expect(() => new Resvg(text, { font: { loadSystemFonts: false } })).not.toThrow();
  });

  it('draws marks of a block where the block hangs, turned with it, dark under light', () => {
    const project = randomProject(6, 8, 1, 2);
    const drawing = drawProject(project);
    const mark = { kind: 'seam' as const, block: 'b1', from: { x: 1, y: 2 }, to: { x: 3, y: 4 }, inches: 2 };
    const gone = { ...mark, block: 'elsewhere' };
    const pool = {
      kind: 'pool' as const,
      outline: [
        { x: 0, y: 0 },
        { x: 5, y: 0 },
        { x: 5, y: 5 },
      ],
    };
    const text = drawingToSvg(drawing, { marks: [mark, gone, pool] });
    // Block 2 hangs with its middle at (21, 7), one quarter turn clockwise: (x, y) goes to (−y, x).
    expect(text.match(/d="M19,8L17,10"/g)).toHaveLength(2);
    expect(text.match(/data-mark="seam"/g)).toHaveLength(1);
    expect(text.match(/data-mark="pool"/g)).toHaveLength(1);
    expect(drawingToSvg(drawing)).not.toContain('data-layer="marks"');
  });

  it('draws a centre of weight with a line from the middle, each kind with a form of its own', () => {
    const drawing = drawProject(randomProject(6, 8, 1, 2));
    const marked = (of: 'light' | 'warmth' | 'fabric') =>
      drawingToSvg(drawing, { marks: [{ kind: 'centre', of, at: { x: 9, y: 8 }, middle: { x: 7, y: 5 } }] });
    const texts = (['light', 'warmth', 'fabric'] as const).map((of) => {
      expect(marked(of)).toContain(`data-mark="centre-${of}"`);
      expect(marked(of)).toContain('M7,5L9,8');
      return marked(of).replaceAll(`centre-${of}`, '');
    });
    expect(new Set(texts).size).toBe(3);
  });

  it('of an empty wall shows its open cells', () => {
    const plain = randomProject(1, 8, 2, 2);
    const svg = drawingToSvg(
      drawProject({ ...plain, wall: { ...plain.wall, cells: [null, null, null, null] } }),
    );
    expect(svg.match(/data-empty-cell/g)).toHaveLength(4);
    expect(readSvg(svg).polygons).toHaveLength(0);
  });
});
