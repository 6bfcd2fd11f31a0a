// One fabric replaced by another everywhere: in the quilt and its colourways, not on hand; told in how many places; one step to undo.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../../src/editing/apply';
import { changeSwaps } from '../../../src/editing/commands/colourways';
import { placesOf, replaceFabric } from '../../../src/editing/commands/fabrics';
import { EMPTY_HISTORY, record, undo } from '../../../src/editing/history';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { demo, unsewn } from '../../demo';
import { documents, mentions } from '../../model/schemaWalk';

const FABRICS = ['cloth-1', 'cloth-2', 'cloth-3'];
const RUNS = { numRuns: 300, seed: 4193 };
const ON_HAND = /^(stripsOnHand|clothOnHand)\[/;
const SWAP = /^colourways\[/;

/** The document with one fabric replaced, whatever else is wrong with it. */
function replaced(project: Project, id: string, by: string): Project {
  const draft = structuredClone(project);
  replaceFabric(project, id, by).change?.(draft);
  return draft;
}

const named = (project: Project) => mentions(project).filter((one) => one.fabric);

describe('replacing a fabric everywhere', () => {
  it('writes the other in each place of the quilt, and changes no other place and nothing on hand', () => {
    fc.assert(
      fc.property(documents(FABRICS).map(unsewn), (project) => {
        const after = replaced(project, 'cloth-1', 'cloth-2');
        const quilt = (of: Project) => named(of).filter(({ path }) => !SWAP.test(path));
        const expected = quilt(project).map(({ path, id }) =>
          [path, id === 'cloth-1' && !ON_HAND.test(path) ? 'cloth-2' : id].join(' '),
        );
        expect(quilt(after).map(({ path, id }) => `${path} ${id}`)).toEqual(expected);
      }),
      RUNS,
    );
  });

  it('leaves it in no colourway, and each colourway with one row for a fabric, none for itself', () => {
    fc.assert(
      fc.property(documents(FABRICS).map(unsewn), (drawn) => {
        // A colourway of a quilt has one row for each fabric.
        const project = {
          ...drawn,
          colourways: drawn.colourways.map((one) => ({
            ...one,
            swaps: one.swaps.filter(
              (swap, at) => one.swaps.findIndex(({ fabric }) => fabric === swap.fabric) === at,
            ),
          })),
        };
        const after = replaced(project, 'cloth-1', 'cloth-2');
        for (const [at, { swaps }] of after.colourways.entries()) {
          const before = project.colourways[at]!.swaps;
          expect(swaps.some(({ fabric, by }) => fabric === 'cloth-1' || by === 'cloth-1')).toBe(false);
          expect(new Set(swaps.map(({ fabric }) => fabric)).size).toBe(swaps.length);
          expect(swaps.some(({ fabric, by }) => fabric === by)).toBe(false);
          // What replaced it goes on replacing what came in its place, unless that was exchanged already.
          const own = (fabric: string) => before.find((swap) => swap.fabric === fabric)?.by;
          const wanted = own('cloth-2') ?? own('cloth-1') ?? 'cloth-2';
          const now = swaps.find(({ fabric }) => fabric === 'cloth-2')?.by ?? 'cloth-2';
          expect(now).toBe(wanted === 'cloth-1' ? 'cloth-2' : wanted);
        }
      }),
      RUNS,
    );
  });

  it('and back by one undo, told with the places', () => {
    for (const name of ['harbour-reading-corner', 'keepers-winter', 'plum-orchard', 'kiln-shed'] as const) {
      const plain = unsewn(demo(name));
      const [one, two, three] = plain.fabrics.map(({ id }) => id) as [string, string, string];
      const [colourway] = plain.colourways;
      const outcome = colourway
        ? apply(plain, changeSwaps(plain, colourway.id, [{ fabric: one, by: three }]))
        : null;
      const project = outcome?.ok ? outcome.project : plain;
      const strips = project.stripSets
        .flatMap((set) => set.strips)
        .filter((strip) => strip.fabric === one).length;
      expect(placesOf(project, one)).toBeGreaterThanOrEqual(strips + (colourway ? 1 : 0));
      const command = replaceFabric(project, one, two);
      const done = apply(project, command);
      if (!done.ok) throw new Error(speak(done.problems[0]!.message));
      expect(placesOf(done.project, one)).toBe(0);
      expect(speak(command.label)).toMatch(new RegExp(` in ${placesOf(project, one)} places?$`));
      expect(undo(done.project, record(EMPTY_HISTORY, done.change))!.project).toEqual(project);
    }
  });
});
