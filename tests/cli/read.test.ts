// npm run read, in this process: arguments, read.json, pictures that cannot be read.
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readPictures } from '../../src/cli/read';
import { pixelsOf } from '../../src/photo/pixels/linear';
import { chance } from '../photo/render/clothLight';
import { clothPlane, printed } from '../photo/render/clothScene';
import { cornersOff } from '../photo/render/marks';
import { png } from '../photo/render/photograph';
import { type BlockShot, blockShotOnce } from '../photo/render/shots';

const folder = mkdtempSync(join(tmpdir(), 'wedgewall-read-'));
let shot: BlockShot;

beforeAll(async () => {
  shot = await blockShotOnce(3, 400);
  writeFileSync(join(folder, 'block.png'), await png(shot.pixels));
  writeFileSync(join(folder, 'quilt.json'), JSON.stringify(shot.project));
  writeFileSync(join(folder, 'broken.jpg'), 'no picture at all');
  writeFileSync(
    join(folder, 'lies.png'),
    '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><script>1</script></svg>',
  );
}, 600_000);

async function run(...words: string[]) {
  let [out, error] = ['', ''];
  const status = await readPictures(words, {
    folder,
    print: (line) => (out += `${line}\n`),
    complain: (line) => (error += `${line}\n`),
  });
  return { status, out, error };
}

interface ReadFile {
  readonly pictures: readonly {
    readonly file: string;
    readonly problem: string | null;
    readonly corners: readonly { readonly x: number; readonly y: number }[];
    readonly rims: readonly { readonly fabric: string | null; readonly confidence: number }[];
    readonly wedges: readonly (readonly { readonly fabric: string | null; readonly width: number }[])[];
    readonly block: { readonly number: number; readonly quarters: number } | null;
    readonly mean: string;
    readonly colours: readonly { readonly share: number }[];
  }[];
}

function readJson(out: string): ReadFile {
  return JSON.parse(readFileSync(join(folder, out, 'read.json'), 'utf8')) as ReadFile;
}

describe('npm run read', () => {
  it('writes what a block is, and a sentence for each picture that cannot be read', async () => {
    const { status, error } = await run(
      'block.png',
      'broken.jpg',
      'lies.png',
      'missing.png',
      '--project',
      'quilt.json',
      '--what',
      'block',
      '--out',
      'blocks',
    );
    expect(status).toBe(2);
    const [block, ...bad] = readJson('blocks').pictures;
    expect(block!.problem).toBeNull();
    expect(cornersOff(block!.corners, shot.corners)).toBeLessThan(0.01);
    expect(block!.block).toMatchObject({ number: shot.number, quarters: shot.quarters });
    expect(block!.rims).toHaveLength(shot.wedges.length);
    expect(block!.wedges.map((bands) => bands[0]!.fabric)).toEqual(block!.rims.map(({ fabric }) => fabric));
    for (const one of bad) {
      expect(one.problem).toMatch(/[.]$/u);
      expect(error).toContain(one.file);
    }
  });

  it('writes what a fabric is', async () => {
    const cloth = pixelsOf(clothPlane(printed('dots', 1, chance(1), 2), 120, 90, 30));
    writeFileSync(join(folder, 'cloth.png'), await png(cloth));
    const { status } = await run(
      'cloth.png',
      '--project',
      'quilt.json',
      '--what',
      'fabric',
      '--out',
      'fabrics',
    );
    expect(status).toBe(0);
    const [fabric] = readJson('fabrics').pictures;
    expect(fabric!.mean).toMatch(/^#[0-9a-f]{6}$/);
    expect(fabric!.colours.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 2);
  });

  it.each([
    [['block.png', '--what', 'block', '--out', 'x'], '--project'],
    [['block.png', '--project', 'quilt.json', '--what', 'quilt', '--out', 'x'], '--what'],
    [['block.png', '--project', 'quilt.json', '--what', 'block'], '--out'],
    [['--project', 'quilt.json', '--what', 'block', '--out', 'x'], 'picture'],
    [
      ['block.png', '--project', 'quilt.json', '--project', 'quilt.json', '--what', 'block', '--out', 'x'],
      'twice',
    ],
    [['block.png', '--project', 'none.json', '--what', 'block', '--out', 'x'], 'none.json'],
    [['block.png', '--project', 'quilt.json', '--what', 'block', '--out', 'quilt.json'], 'folder'],
    [['block.png', '--fast'], 'fast'],
  ])('refuses %j', async (words, told) => {
    const { status, error } = await run(...words);
    expect(status).toBe(2);
    expect(error).toContain(told);
    expect(existsSync(join(folder, 'x'))).toBe(false);
  });

  it('stops where the person says so, and writes nothing', async () => {
    const stop = new AbortController();
    stop.abort();
    const words = ['block.png', '--project', 'quilt.json', '--what', 'block', '--out', 'stopped'];
    const status = await readPictures(words, {
      folder,
      print: () => {},
      complain: () => {},
      stop: stop.signal,
    });
    expect(status).toBe(130);
    expect(existsSync(join(folder, 'stopped'))).toBe(false);
  });
});
