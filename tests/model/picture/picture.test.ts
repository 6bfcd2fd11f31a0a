// Which pictures a document names: the rule of the model against a walk along the document by its schema.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { picturesUsed } from '../../../src/model/picture/picture';
import { documents, mentions } from '../schemaWalk';

it('finds every picture that a document names anywhere', () => {
  let found = 0;
  fc.assert(
    fc.property(documents(['one', 'two']), (project) => {
      const named = mentions(project).filter((mention) => mention.picture);
      found += named.length;
      expect([...picturesUsed(project)].sort()).toEqual([...new Set(named.map(({ id }) => id))].sort());
    }),
    { seed: 12, numRuns: 400 },
  );
  expect(found).toBeGreaterThan(400);
});
