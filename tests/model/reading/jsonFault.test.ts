// The first fault of a text as JSON (RFC 8259): there is one exactly where the engine's own parser refuses the text, and it lies where that parser
// says, if it says where.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonFault } from '../../../src/model/reading/jsonFault';
import { runs } from '../../runs';

const harbour = readFileSync(
  new URL('../../../demo-data/harbour-reading-corner.json', import.meta.url),
  'utf8',
);

/** Why the engine refuses a text: null where it does not, and the position where it tells one. */
function byEngine(text: string): { readonly position: number | null } | null {
  try {
    JSON.parse(text);
    return null;
  } catch (error) {
    const position = /position (\d+)/.exec((error as Error).message)?.[1];
    return { position: position === undefined ? null : Number(position) };
  }
}

let placed = 0;
function agrees(text: string): void {
  const [own, engine] = [jsonFault(text), byEngine(text)];
  if (own === null || engine === null) {
    expect([own, text]).toEqual([engine, text]);
    return;
  }
  if (engine.position === null) return;
  placed += 1;
  expect({ text: text.slice(Math.max(0, own.position - 20), own.position + 20), at: own.position }).toEqual({
    text: text.slice(Math.max(0, engine.position - 20), engine.position + 20),
    at: engine.position,
  });
}

describe('the first fault of a text', () => {
  it('is where the engine finds it, in project files with a letter changed, gone or added', () => {
    placed = 0;
    const letter = fc.constantFrom(...'{}[]",:\\\'0123456789-+.eEtfnul/ \n\t\u0001\u00a0é'.split(''));
    fc.assert(
      fc.property(fc.nat(harbour.length - 1), letter, fc.constantFrom(0, 1, 2), (at, put, cut) =>
        agrees(`${harbour.slice(0, at)}${put}${harbour.slice(at + cut)}`),
      ),
      { numRuns: runs(500, 3000), seed: 13 },
    );
    expect(placed).toBeGreaterThan(runs(160, 500));
  });

  it('is where the engine finds it, in short texts of the letters that matter', () => {
    const letters = fc.constantFrom(
      ...'{}[]",:\\0123.-+eE'.split(''),
      'true',
      'null',
      'fals',
      '"a"',
      '\\u00',
      '\\n',
      ' ',
      '\n',
      '\t',
    );
    fc.assert(
      fc.property(fc.array(letters, { maxLength: 12 }), (parts) => agrees(parts.join(''))),
      { numRuns: runs(6670, 20000), seed: 14 },
    );
  });

  it('is where the engine finds it, where a project file breaks off', () => {
    for (let length = 0; length < 1500; length += 7) agrees(harbour.slice(0, length));
  });

  it.each([
    ['{\n "a": 1,\n "b" 2\n}', 3, 6, 'colon'],
    ['{\n "a": 1,\n}', 3, 1, 'key'],
    ['{"a": 1 "b": 2}', 1, 9, 'comma'],
    ['[1, 2', 1, 6, 'end'],
    ['{"a": "x\ny"}', 1, 9, 'break'],
    ["{'a': 1}", 1, 2, 'key'],
    ['{"a": 01}', 1, 8, 'comma'],
    ['{"a": yes}', 1, 7, 'value'],
    ['{} {}', 1, 4, 'more'],
    ['{"a": "\\q"}', 1, 9, 'escape'],
    ['{\r\n "a": x}', 2, 7, 'value'],
  ])('of %j is in line %i, column %i', (text, line, column, kind) => {
    expect(jsonFault(text)).toMatchObject({ line, column, kind });
  });

  it('is found in a text nested deeper than any engine can follow', () => {
    const deep = '['.repeat(200_000);
    expect(jsonFault(deep)).toMatchObject({ position: 200_000, kind: 'end' });
  });
});
