// The sheet as a shop runs it: a command in a terminal, its files, its messages and its exit status.
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { makeSheets } from '../../src/cli/sheet';
import type { Project } from '../../src/model/project';
import { writeProject } from '../../src/model/reading/read';
import { type ReadPolygon, readSvg, sharedEdge } from '../drawing/readSvg';
import { randomProject } from '../drawing/samples';
import { root, runSheet, startSheet } from './runSheet';

const harbour = join(root, 'demo-data', 'harbour-reading-corner.json');
const keeper = join(root, 'demo-data', 'keepers-winter.json');

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'sheet-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const sheet = (...words: string[]) => runSheet(folder, ...words);

interface Report {
  readonly findings: { readonly measured: string }[];
  readonly evenness: { readonly scale: string; readonly figure: string }[];
  readonly wholeTop: { readonly light: { readonly words: string } };
  readonly dominant: string;
  readonly format: string;
  readonly version: number;
  readonly top: {
    finished: { width: number; height: number };
    unfinished: { width: number; height: number };
  };
  readonly block: { finished: { width: number }; unfinished: { width: number }; rim: number };
  readonly sets: {
    label: string;
    height: number;
    wedges: { planned: { up: number; down: number }; available: object; used: object; left: object };
  }[];
  readonly blocks: { number: number; row: number | null }[];
  readonly clashes: {
    kind: string;
    inches: number;
    likeness: number;
    blocks: number[];
    at: { from: { x: number; y: number }; to: { x: number; y: number } }[];
  }[];
  readonly clashTotals: { count: number; byKind: Record<string, { count: number; inches: number }> };
  readonly fabrics: {
    id: string;
    area: number;
    share: number;
    background: boolean;
    spread: {
      share: number;
      rims: number;
      joins: { both: { statistic: number }; mixed: { statistic: number } };
    } | null;
  }[];
  readonly value: { top: { mean: number; tenths: number[] }; wedges: object };
}

function reportIn(path: string): Report {
  return JSON.parse(readFileSync(join(path, 'report.json'), 'utf8')) as Report;
}

/** Width and height from the header of a PNG file (the IHDR chunk of the PNG specification). */
function pngSize(path: string): number[] {
  const bytes = readFileSync(path);
  expect(bytes.subarray(1, 4).toString()).toBe('PNG');
  return [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
}

describe('npm run sheet with a good project', () => {
  it('writes the wall as SVG and PNG and a report whose figures are those of the trade', async () => {
    const out = join(folder, 'new', 'sheets');
    const run = await sheet(harbour, '--out', out, '--width', '560');
    expect([run.status, run.error]).toEqual([0, '']);
    expect(readdirSync(out).toSorted()).toEqual(['report.json', 'wall.png', 'wall.svg']);
    // The binding's edge stands a quarter inch round the 28 × 42 top: 28½ × 42½.
    expect(pngSize(join(out, 'wall.png'))).toEqual([560, Math.round((560 * 42.5) / 28.5)]);
    const report = reportIn(out);
    expect([report.format, report.version]).toEqual(['wedgewall-report', 1]);
    expect(report.top).toEqual({
      finished: { width: 28, height: 42 },
      unfinished: { width: 28.5, height: 42.5 },
    });
    // A 7½ wedge at ¼ seams makes a 14½ unfinished block; 40 of a set 8 high gives 11 (plane geometry).
    expect(report.block.unfinished.width).toBe(14.5);
    expect(report.sets.map((set) => [set.label, set.height])).toEqual(
      ['A', 'B', 'C', 'D', 'E'].map((label) => [label, 8]),
    );
    for (const { wedges } of report.sets) expect(wedges.planned.up + wedges.planned.down).toBe(11);
    expect(report.blocks.map((block) => [block.number, block.row])).toEqual(
      [1, 2, 3, 4, 5, 6].map((n) => [n, Math.ceil(n / 2)]),
    );
    expect(report.fabrics.reduce((sum, fabric) => sum + fabric.area, 0)).toBeCloseTo(28 * 42, 3);
    expect(report.value.top.tenths.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 4);
    for (const finding of report.findings) expect(finding.measured).toMatch(/\d/);
    expect(report.evenness.map((row) => `${row.scale} ${row.figure}`)).toHaveLength(6);
    expect(report.wholeTop.light.words).toMatch(/^Lights balance .*"/);
    const spreads = report.fabrics.flatMap((fabric) => (fabric.spread ? [fabric.spread] : []));
    expect(report.fabrics.map((fabric) => fabric.id)).toContain(report.dominant);
    expect(spreads.reduce((sum, spread) => sum + spread.share, 0)).toBeCloseTo(1, 4);
    expect(spreads.reduce((sum, spread) => sum + spread.rims, 0)).toBe(48);
    // Eight seams in each of six blocks, and one pair of rims across each of the seven edges between blocks.
    const joins = spreads.reduce(
      (sum, { joins: { both, mixed } }) => sum + both.statistic + mixed.statistic / 2,
      0,
    );
    expect(joins).toBeCloseTo(6 * 8 + 7, 3);
  });

  it('reports every stretch where a cloth meets itself, as found again in the coordinates of the SVG', async () => {
    await sheet(harbour, '--out', folder, '--width', '64');
    const report = reportIn(folder);
    const background = new Set(
      report.fabrics.filter((fabric) => fabric.background).map((fabric) => fabric.id),
    );
    const svg = readSvg(readFileSync(join(folder, 'wall.svg'), 'utf8'));
    const cloth = svg.polygons.filter(({ data }) => !background.has(data['data-fabric']!));
    const wedge = ({ data }: ReadPolygon) => `${data['data-block']} ${data['data-place']}`;
    const found = { inside: 0, between: 0, rims: 0 };
    cloth.forEach((one, at) => {
      for (const other of cloth.slice(at + 1)) {
        if (one.data['data-fabric'] !== other.data['data-fabric'] || wedge(one) === wedge(other)) continue;
        const length = sharedEdge(one, other);
        if (length < 1e-4) continue;
        const sameBlock = one.data['data-block'] === other.data['data-block'];
        found[sameBlock ? 'inside' : 'between'] += length;
        if (sameBlock && one.data['data-band'] === '1' && other.data['data-band'] === '1') found.rims += 1;
      }
    });
    const same = report.clashes.filter((clash) => clash.likeness === 1);
    const inches = (...kinds: string[]) =>
      same.filter((clash) => kinds.includes(clash.kind)).reduce((sum, clash) => sum + clash.inches, 0);
    expect(inches('rim', 'radial')).toBeCloseTo(found.inside, 3);
    expect(inches('facing')).toBeCloseTo(found.between, 3);
    expect(same.filter((clash) => clash.kind === 'rim')).toHaveLength(found.rims);
    expect(found.rims).toBeGreaterThanOrEqual(2);
    expect(found.between).toBeGreaterThan(0);
    for (const clash of report.clashes) {
      expect(clash.at.length).toBeGreaterThan(0);
      const long = clash.at.reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);
      expect(long).toBeCloseTo(clash.inches, 4);
    }
  });

  it('takes several projects, each into a folder of its own, and repeats itself to the letter', async () => {
    const words = [harbour, keeper, '--width', '64', '--marks'];
    expect((await sheet(...words, '--out', 'one')).status).toBe(0);
    expect((await sheet(...words, '--out', 'two')).status).toBe(0);
    expect(readdirSync(join(folder, 'one')).toSorted()).toEqual(['harbour-reading-corner', 'keepers-winter']);
    for (const name of ['harbour-reading-corner', 'keepers-winter']) {
      for (const file of ['wall.svg', 'wall.png', 'report.json']) {
        const [first, second] = ['one', 'two'].map((out) => readFileSync(join(folder, out, name, file)));
        expect(first!.equals(second!)).toBe(true);
      }
    }
    expect(readFileSync(join(folder, 'one/keepers-winter/wall.svg'), 'utf8')).toContain('data-mark="seam"');
  });

  it('takes a project without any block', async () => {
    const out = join(folder, 'kiln');
    expect((await sheet(join(root, 'demo-data/kiln-shed.json'), '--out', out, '--width', '64')).status).toBe(
      0,
    );
    expect(reportIn(out).clashTotals.count).toBe(0);
    expect(reportIn(out).value).toEqual({ top: null, wedges: null });
  });
});

describe('npm run sheet with bad input', () => {
  const project = JSON.parse(readFileSync(harbour, 'utf8')) as Project;
  const small = writeProject(randomProject(3, 8));
  const written = (content: unknown) => {
    const path = join(folder, 'given.json');
    writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
    return path;
  };

  it.each<[string, (path: typeof written) => string[], string[]]>([
    ['a file that is not there', () => ['absent.json'], ['absent.json', 'no such file']],
    ['a folder for a project', () => ['.'], ['.', 'folder']],
    ['what is not JSON', (file) => [file('{"format": ')], ['given.json', 'the file breaks off here']],
    ['another kind of JSON', (file) => [file({ hello: 1 })], ['given.json']],
    [
      'a wedge from a set that is not there',
      (file) => {
        const blocks = structuredClone(project.blocks);
        blocks[3]!.places[1] = { set: 's99', tip: 'up' };
        return [file({ ...project, blocks })];
      },
      ['given.json', 'blocks[3].places[1].set', 's99'],
    ],
    [
      'more wedges than were cut',
      (file) => [file({ ...project, stripSets: project.stripSets.map((set) => ({ ...set, length: 12 })) })],
      ['given.json', 'stripSets[0]', 'Set A gives'],
    ],
    ['one bad project among good ones', (file) => [harbour, file('[]')], ['given.json']],
    ['two projects of one name', () => [harbour, harbour], ['harbour-reading-corner']],
    ['no project', () => [], ['at least one quilt file']],
    ['an unknown option', () => [harbour, '--colour', 'blue'], ['--colour']],
    ['a width that is no number', () => [harbour, '--width', 'wide'], ['--width', 'wide']],
    ['a width of nothing', () => [harbour, '--width', '0'], ['--width', '0']],
    ['a width in another base', () => [harbour, '--width', '0x100'], ['--width', '0x100']],
    ['a width as a power', () => [harbour, '--width', '1e2'], ['--width', '1e2']],
    ['a width between blanks', () => [harbour, '--width', ' 64 '], ['--width']],
    ['two folders', () => [harbour, '--out', 'elsewhere'], ['--out', 'twice']],
  ])('ends with status 2, says what is wrong with %s, and writes nothing', async (_what, words, says) => {
    const out = join(folder, 'out');
    const run = await sheet(...words(written), '--out', out);
    expect(run.status).toBe(2);
    for (const part of says) expect(run.error).toContain(part);
    expect(run.out).toBe('');
    expect(existsSync(out)).toBe(false);
  });

  it('keeps to the folder it is given, whatever the projects are called', async () => {
    const out = join(folder, 'inside', 'out');
    for (const name of ['..json', '...json', '.json', 'Keeper.JSON', 'keeper 2.json']) writeFileSync(join(folder, name), small);
    const names = ['..json', 'Keeper.JSON', 'keeper 2.json'];
    const run = await sheet(...names, '--out', out, '--width', '16');
    expect(run.status).toBe(0);
    expect(readdirSync(out)).toEqual(['Keeper', 'keeper 2', 'project']);
    expect(readdirSync(join(folder, 'inside'))).toEqual(['out']);
    expect((await sheet('..json', '...json', '--out', out)).status).toBe(2);
  }); // biome-ignore format: short

  it('leaves nothing behind when it is stopped between two files', async () => {
    const out = join(folder, 'out');
    for (const name of ['one.json', 'two.json']) writeFileSync(join(folder, name), small);
    for (const after of [0, 1, 2, 4, 5]) {
      let written = 0;
      const stop = { get aborted() { written += 1; return written > after; } } as AbortSignal;
      const error: string[] = [];
      const words = ['one.json', 'two.json', '--out', out, '--width', '16'];
      const status = await makeSheets(words, { folder, print: () => {}, complain: (line) => error.push(line), stop });
      expect([status, error, written]).toEqual([130, ['Stopped; nothing is written.'], after + 1]);
      expect(existsSync(out)).toBe(false);
    }
  }); // biome-ignore format: short

  it('ends its process with status 2 when no folder is named', () => {
    const run = startSheet(folder, harbour);
    expect(run.status).toBe(2);
    expect(run.error).toContain('--out');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('ends with status 2 and leaves the file alone when the folder to write into is a file, or lies in one', async () => {
    const file = join(folder, 'file');
    writeFileSync(file, 'mine');
    for (const out of [file, join(file, 'below')]) {
      const run = await sheet(harbour, '--out', out);
      expect(run.status).toBe(2);
      expect(run.error).toContain(file);
    }
    expect(readFileSync(file, 'utf8')).toBe('mine');
    expect(readdirSync(folder)).toEqual(['file']);
  });

  it.runIf(existsSync('/proc/self'))('ends with status 2 where the system makes no folders', async () => {
    const run = await sheet(harbour, '--out', '/proc/wedgewall/sheets');
    expect(run.status).toBe(2);
    expect(run.error).toContain('/proc/wedgewall');
  });

  it('takes back what it wrote when a later file cannot be written', async () => {
    const out = join(folder, 'out');
    mkdirSync(join(out, 'two', 'report.json'), { recursive: true });
    for (const name of ['one.json', 'two.json']) writeFileSync(join(folder, name), small);
    const run = await sheet('one.json', 'two.json', '--out', out, '--width', '64');
    expect(run.status).toBe(2);
    expect(run.error).toContain('report.json');
    expect(readdirSync(out)).toEqual(['two']);
    expect(readdirSync(join(out, 'two'))).toEqual(['report.json']);
  });
});
