// The Node that package.json asks for: true of every package in the lock, and refused or taken as npm would.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { satisfies, subset } from 'semver';
import { expect, it } from 'vitest';
import { nodeRefusal } from '../scripts/install.mjs';

const read = (path: string) => JSON.parse(readFileSync(new URL(`../${path}`, import.meta.url), 'utf8'));
const claim: string = read('package.json').engines.node;
const packages: Record<string, { engines?: { node?: string }; optional?: true }> =
  read('package-lock.json').packages;

it('is one that every package runs on by its own claim, the types and the lock included', () => {
  // npm leaves out an optional package that does not run where it is: the same binary for another machine.
  const claims = Object.entries(packages).flatMap(([path, { engines, optional }]) =>
    engines?.node && !optional ? [[path, engines.node] as const] : [],
  );
  expect(claims.length).toBeGreaterThan(50);
  expect(claims.filter(([, theirs]) => !subset(claim, theirs))).toEqual([]);
  expect(packages['']!.engines?.node).toBe(claim);
});

it('is taken or refused by npm start and npm test as the rules of version ranges say (semver)', () => {
  const version = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 }), fc.nat(3));
  fc.assert(
    fc.property(version, (parts) => {
      const node = parts.join('.');
      expect(nodeRefusal(node, claim) === null).toBe(satisfies(node, claim));
    }),
    {
      seed: 24,
      numRuns: 500,
      examples: [[[20, 18, 3]], [[20, 19, 0]], [[22, 12, 0]], [[23, 9, 0]], [[24, 0, 0]]],
    },
  );
});

it('is named in the refusal', () => {
  expect(nodeRefusal('20.11.0', claim)).toBe(
    'Wedgewall needs Node 20 (from 20.19), 22 (from 22.13), 24 or newer; this is Node 20.11.0.',
  );
});
