// The ledger of wedges is kept for a quilt on screen, whose parts are frozen: what is kept must be what would be worked out.
import fc from 'fast-check';
import { produce } from 'immer';
import { expect, it } from 'vitest';
import { wedgeLedger } from '../../../src/cutting/wedges/ledger';
import type { Project } from '../../../src/model/project';
import { scrappyTop } from '../../balance/tops';

/** Worked out: nothing is kept for lists of its own. */
const workedOut = (project: Project) => wedgeLedger(structuredClone(project));

type Change = (draft: Project, at: number) => void;
const CHANGES: readonly Change[] = [
  (draft, at) => {
    draft.blocks[at % draft.blocks.length]!.places[at % 8] = null;
  },
  (draft, at) => {
    draft.stripSets[at % draft.stripSets.length]!.length = 40 + at;
  },
  (draft, at) => {
    draft.wedge.cutHeight = 5 + (at % 3);
  },
  (draft, at) => {
    draft.wall.cells[at % draft.wall.cells.length] = null;
  },
];

it('is as worked out after every change, and asked twice in a row', () => {
  const change = fc.record({ kind: fc.nat(CHANGES.length - 1), at: fc.nat(60) });
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9 }), fc.array(change, { maxLength: 6 }), (seed, changes) => {
      let project = produce(scrappyTop({ rows: 2, columns: 2, seed }), (draft) => {
        draft.name = 'Kept';
      });
      for (const { kind, at } of changes) {
        expect(wedgeLedger(project)).toEqual(workedOut(project));
        project = produce(project, (draft) => CHANGES[kind]!(draft, at));
        for (let time = 0; time < 2; time++) expect(wedgeLedger(project)).toEqual(workedOut(project));
      }
    }),
  );
});

it('is read anew where a list may be changed in place', () => {
  const project = scrappyTop({ rows: 1, columns: 1, seed: 1 });
  const used = () => wedgeLedger(project).reduce((sum, row) => sum + row.used.up + row.used.down, 0);
  expect(used()).toBe(8);
  (project.blocks[0]!.places as unknown[])[0] = null;
  expect(used()).toBe(7);
});
