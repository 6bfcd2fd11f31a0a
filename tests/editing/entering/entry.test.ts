// Blocks typed in wedge by wedge: any block can be typed, with one key to the wedge where tips alternate, and every key is taken back.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Entry, emptyEntry, entryOf, proposedTip, typed } from '../../../src/editing/entering/entry';
import { setLetter } from '../../../src/model/find';
import { type Place, type Tip, WEDGE_COUNTS } from '../../../src/model/project';
import { runs } from '../../runs';

const setsOf = (count: number) =>
  Array.from({ length: count }, (_, at) => ({ id: `s${at}`, label: setLetter(at) }));

/** The entry after keys, each of which must mean something. */
function play(entry: Entry, keys: readonly string[], sets = setsOf(5)): Entry {
  return keys.reduce((now, key) => {
    const next = typed(now, key, sets);
    expect(next?.refused ?? null).toBe(null);
    return next!.entry;
  }, entry);
}

/** The keys of a block: its letters, Space where a name could go on, an arrow where the tip is not the proposed one. */
function keysOf(block: readonly Place[], sets: ReturnType<typeof setsOf>): string[] {
  let tip: Tip = 'up';
  return block.flatMap((wedge) => {
    const { label } = sets.find(({ id }) => id === wedge.set)!;
    const goesOn = sets.some((one) => one.label !== label && one.label.startsWith(label));
    const keys = Array.from(label.toLowerCase());
    if (wedge.tip !== tip) keys.push(wedge.tip === 'up' ? 'ArrowUp' : 'ArrowDown');
    else if (goesOn) keys.push(' ');
    tip = wedge.tip === 'up' ? 'down' : 'up';
    return keys;
  });
}

const blocks = fc
  .record({ sets: fc.integer({ min: 1, max: 60 }), perBlock: fc.constantFrom(...WEDGE_COUNTS) })
  .chain(({ sets, perBlock }) =>
    fc.record({
      sets: fc.constant(setsOf(sets)),
      alternating: fc.array(fc.nat(sets - 1), { minLength: perBlock, maxLength: perBlock }),
      any: fc.array(
        fc.record({ set: fc.nat(sets - 1).map((at) => `s${at}`), tip: fc.constantFrom<Tip>('up', 'down') }),
        { minLength: perBlock, maxLength: perBlock },
      ),
    }),
  );

describe('a block typed in', () => {
  it('comes out as it is, whatever its sets and tips are', () => {
    fc.assert(
      fc.property(blocks, ({ any, sets }) => {
        const entry = play(emptyEntry(any.length), keysOf(any, sets), sets);
        expect(entry.places).toEqual(any);
        expect(entry.at).toBe(null);
      }),
      { numRuns: runs(100, 300) },
    );
  });
  it('needs one key to the wedge where tips alternate and sets have one letter', () => {
    fc.assert(
      fc.property(blocks, ({ alternating, sets }) => {
        fc.pre(sets.length <= 26);
        const keys = alternating.map((at) => sets[at]!.label);
        const { places } = play(emptyEntry(keys.length), keys, sets);
        expect(places).toEqual(
          alternating.map((at, place) => ({ set: `s${at}`, tip: place % 2 === 0 ? 'up' : 'down' })),
        );
      }),
      { numRuns: 200 },
    );
  });
  it('is taken back wedge by wedge', () => {
    fc.assert(
      fc.property(blocks, fc.nat(12), ({ any, sets }, cut) => {
        const filled = any.slice(0, Math.min(cut, any.length - 1));
        const before = play(emptyEntry(any.length), keysOf(filled, sets), sets);
        const after = play(before, [...keysOf([any[0]!], sets).slice(0, 2), ' ', 'Backspace'], sets);
        expect({ places: after.places, at: after.at, order: after.order }).toEqual({
          places: before.places,
          at: before.at,
          order: before.order,
        });
      }),
      { numRuns: 200 },
    );
  });
});

describe('the keys of a block', () => {
  const up = (set: string) => ({ set, tip: 'up' });
  const down = (set: string) => ({ set, tip: 'down' });
  it('say the tip of the wedge just put in; the next one alternates with it', () => {
    const entry = play(emptyEntry(8), ['a', 'ArrowDown', 'c']);
    expect(entry.places.slice(0, 2)).toEqual([down('s0'), up('s2')]);
  });
  it('say the tip of the first wedge before its letter', () => {
    const entry = play(emptyEntry(8), ['ArrowDown', 'a', 'b']);
    expect(entry.places.slice(0, 2)).toEqual([down('s0'), up('s1')]);
  });
  it('take u and d for tips while no set begins with them, and for sets where one does', () => {
    expect(play(emptyEntry(8), ['a', 'd'], setsOf(3)).places.slice(0, 2)).toEqual([down('s0'), null]);
    expect(play(emptyEntry(8), ['a', 'd'], setsOf(5)).places.slice(0, 2)).toEqual([up('s0'), down('s3')]);
  });
  it('fill an empty place anywhere, in turn with the wedge before it', () => {
    const places = [
      up('s0'),
      null,
      up('s0'),
      down('s0'),
      up('s0'),
      down('s0'),
      up('s0'),
      down('s0'),
    ] as Place[];
    const entry = entryOf(places);
    expect(entry.at).toBe(1);
    expect(proposedTip(entry, 1)).toBe('down');
    expect(play(entry, ['b']).places[1]).toEqual(down('s1'));
  });
  it('put another wedge in a place the mark was moved to', () => {
    const entry = play(emptyEntry(6), ['a', 'b', 'c', 'a', 'b', 'ArrowLeft', 'ArrowLeft', 'b']);
    expect(entry.places[3]).toEqual(down('s1'));
    expect(entry.at).toBe(5);
  });
  it('enter a full block over, place by place from the mark to the last', () => {
    const full = play(emptyEntry(6), ['a', 'b', 'c', 'a', 'b', 'c', 'ArrowRight']);
    const over = play(full, ['c', 'c', 'c', 'c', 'c']);
    expect(over.places).toEqual([
      ...full.places.slice(0, 5).map((wedge) => ({ ...wedge, set: 's2' })),
      full.places[5],
    ]);
    expect(over.at).toBe(5);
    expect(play(over, ['a']).at).toBe(null);
  });
  it('refuse a set that is not there and a wedge too many, and change nothing', () => {
    const full = play(emptyEntry(6), ['a', 'b', 'c', 'a', 'b', 'c']);
    for (const [entry, key] of [
      [full, 'a'],
      [emptyEntry(6), 'z'],
    ] as const) {
      const next = typed(entry, key, setsOf(3))!;
      expect(next.refused).not.toBe(null);
      expect(next.entry).toEqual(entry);
    }
  });
});
