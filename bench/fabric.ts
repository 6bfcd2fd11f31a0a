// Fabrics from photographs: colours of known fabrics after the cast is taken out, and the processor time from 12 megapixels to a fabric.
import process from 'node:process';
import { atOnce } from '../src/model/work/parts';
import { readFabric } from '../src/photo/fabric/readFabric';
import { DAYLIGHT } from '../src/photo/light/light';
import { wholeFrame } from '../src/photo/pixels/frame';
import { quantile, readPatch } from '../tests/photo/light/patchReading';
import { chance } from '../tests/photo/render/clothLight';
import { drawnCloth, printed } from '../tests/photo/render/clothScene';
import type { BenchRow, Extent } from './row';

/** Pictures, by extent. */
const PICTURES = { sample: 24, all: 300 };

export async function benchFabric(extent: Extent): Promise<BenchRow[]> {
  return [...(await colours(PICTURES[extent])), speed()];
}

/** Half of them lit by the cones of CAT16, half by spectra. */
async function colours(pictures: number): Promise<BenchRow[]> {
  const offs: number[] = [];
  for (let seed = 1; seed <= pictures; seed += 1)
    offs.push((await readPatch(1000 + seed, seed % 2 === 0 ? 'cones' : 'spectra')).off);
  return ([['median', 0.5, 2], ['95th percentile', 0.95, 4]] as const).map(([name, part, most]) => {
    const off = quantile(offs, part);
    return {
      name: `fabric's colour after the cast is taken out, ${name} of ${pictures} pictures`,
      toReach: `≤ ΔE00 ${most}`,
      measured: off.toFixed(2),
      ok: off <= most,
    };
  }); // biome-ignore format: a table
}

/** Least of a few rounds of processor time of this one thread, so that what else runs does not count. */
function speed(): BenchRow {
  const pixels = drawnCloth(printed('leaves', 1, chance(1)), 4000, 3000, 800);
  const wish = { frame: wholeFrame(pixels), light: DAYLIGHT, uneven: null, perInch: 800, seed: 1 };
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 4; round += 1) {
    const before = process.cpuUsage();
    atOnce(readFabric(pixels, wish));
    const { user, system } = process.cpuUsage(before);
    least = Math.min(least, (user + system) / 1e6);
  }
  return {
    name: 'a picture of 12 megapixels to a fabric, on one core',
    toReach: '≤ 1 s',
    measured: `${least.toFixed(2)} s`,
    ok: least <= 1,
  };
}
