// Bands by dynamic programming with early leaving, against every cut of small wedges.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Fabric } from '../../../src/model/project';
import { type BandReading, bandsOf, costsAs, type Run } from '../../../src/photo/block/bands';
import type { BlockLook } from '../../../src/photo/block/look';
import { type NeutralWedge, neutralWedge } from '../../../src/photo/block/neutral';
import { runCosts } from '../../../src/photo/block/runCost';
import { swatchesOf } from '../../../src/photo/block/swatches';
import { scrappyTop } from '../../balance/tops';
import { runs } from '../../runs';

const RINGS = 9;
const LEAST = 2;
const DARK = new Float64Array(8);

/** A wedge of rings of these lights, in a light that is neutral already. */
function wedgeOf(light: readonly number[]): NeutralWedge {
  const rings = light.length / 3;
  const look: BlockLook = {
    rings,
    radii: Float64Array.from({ length: rings }, (_, ring) => rings - ring),
    pitch: 0.2,
    wedges: [Float32Array.from(light)],
    weights: new Float64Array(rings).fill(1),
    places: [new Float32Array(rings * 2)],
    corners: [],
  };
  return neutralWedge(look, 0, DARK);
}

function readingBy(fabrics: readonly Fabric[]): BandReading {
  return { swatches: swatchesOf(fabrics), noise: { ring: 0.011, band: 0.009 }, pitch: 0.2 };
}

/** Every way to cut rings from `from` on into runs of at least LEAST, neighbours of different kinds. */
function everyCut(kinds: readonly number[], from = 0, last?: number): Run[][] {
  if (from === RINGS) return [[]];
  const cuts: Run[][] = [];
  for (let to = from + LEAST; to <= RINGS; to += 1)
    for (const swatch of kinds)
      if (swatch !== last)
        cuts.push(...everyCut(kinds, to, swatch).map((rest) => [{ from, to, swatch }, ...rest]));
  return cuts;
}

const fabrics = scrappyTop({ rows: 2, columns: 2, seed: 1 }).fabrics;
const aWedge = fc.array(fc.double({ min: 0.01, max: 0.9, noNaN: true }), { minLength: RINGS * 3, maxLength: RINGS * 3 }); // biome-ignore format: one line

it('the bands of a wedge cost as little as the cheapest of all cuts', () => {
  const few = fabrics.slice(0, 2);
  const reading = readingBy(few);
  const cuts = everyCut([-1, 0, 1]).map((runs) => ({ runs }));
  expect(cuts.length).toBeGreaterThan(100);
  // Rings of one fabric or the other with noise, so that there are bands to find.
  const rings = fc.array(fc.tuple(fc.nat(1), fc.double({ min: 0.8, max: 1.25, noNaN: true })), { minLength: RINGS, maxLength: RINGS }); // biome-ignore format: one line
  const drawn = rings.map((list) =>
    list.flatMap(([kind, by]) => reading.swatches[kind]!.light.map((one) => one * by)),
  );
  fc.assert(
    fc.property(fc.oneof(aWedge, drawn), (light) => {
      const wedge = wedgeOf(light);
      const { bands, cost } = bandsOf(wedge, reading, []);
      expect(cost).toBeCloseTo(Math.min(...costsAs(wedge, cuts, reading)), 6);
      expect(costsAs(wedge, [{ runs: bands }], reading)[0]).toBeCloseTo(cost, 6);
    }),
    { numRuns: 60 },
  );
});

it('what a run costs at least is never more than what it costs, and nothing is under 0', () => {
  const { swatches, noise } = readingBy(fabrics);
  fc.assert(
    fc.property(aWedge, fc.nat(RINGS - 2), fc.nat(RINGS), (light, from, long) => {
      const costs = runCosts(wedgeOf(light), swatches, noise);
      costs.look(from, Math.min(RINGS, from + 2 + long));
      for (let kind = 0; kind <= swatches.length; kind += 1) {
        expect(costs.atLeast(kind)).toBeGreaterThanOrEqual(0);
        expect(costs.of(kind)).toBeGreaterThanOrEqual(costs.atLeast(kind) - 1e-9);
      }
    }),
    { numRuns: runs(67, 200) },
  );
});
