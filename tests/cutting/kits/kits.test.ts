// Kits: nothing is ordered short, prices add up, and the tables read back as they were written.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boltsFor } from '../../../src/cutting/kits/bolts';
import { csvText } from '../../../src/cutting/kits/csv';
import { kits } from '../../../src/cutting/kits/kits';
import { orderCsv, stripsCsv } from '../../../src/cutting/kits/kitTables';
import { leastRolls, precutStrips } from '../../../src/cutting/kits/precutStrips';
import { yardage } from '../../../src/cutting/yardage/yardage';
import { usualBuying } from '../../../src/model/buying';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { demo } from '../../demo';
import { projectOf, stripSet } from '../fabrics';

/** A demo quilt without its prices, choices of buying and cloth on hand. */
function unpriced(): Project {
  return { ...demo('keepers-winter'), buying: usualBuying(), clothOnHand: [] };
}

/** RFC 4180 read by a small automaton of its own: fields in quotes or not, rows ended by CR LF. */
function parsed(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = '';
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at]!;
    if (quoted) {
      if (sign === '"' && text[at + 1] === '"') {
        field += '"';
        at += 1;
      } else if (sign === '"') quoted = false;
      else field += sign;
    } else if (sign === '"') {
      if (field !== '') throw new Error('a quote inside an unquoted field');
      quoted = true;
    } else if (sign === ',') {
      row.push(field);
      field = '';
    } else if (sign === '\r' && text[at + 1] === '\n') {
      rows.push([...row, field]);
      row = [];
      field = '';
      at += 1;
    } else if (sign === '\r' || sign === '\n') throw new Error('a bare line break');
    else field += sign;
  }
  if (row.length > 0 || field !== '') throw new Error('the last row is not ended');
  return rows;
}

/** What a spreadsheet takes for a formula where a cell begins with it (OWASP, 'CSV Injection'; null: OWASP ASVS 1.2.10; line feed, wide signs: from memory). */
const RECKONED = /^[=+\-@＝＋－＠\t\r\n\0]/;

/** The text of a cell: the apostrophe that keeps it text is no part of it. */
function textOf(cell: string): string {
  return RECKONED.test(cell.replace(/^'+/, '')) ? cell.slice(1) : cell;
}

describe('a table as CSV', () => {
  // RFC 4180, section 2, rules 5 to 7: the examples given there.
  it('quotes as RFC 4180 shows', () => {
    expect(
      csvText([
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ]),
    ).toBe('aaa,"b\r\nbb",ccc\r\nzzz,yyy,xxx\r\n');
    expect(csvText([['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b""bb",ccc\r\n');
  });

  const cell = fc.oneof(
    fc.string(),
    fc.string({ unit: fc.constantFrom('"', ',', '\r', '\n', 'a', ' ', 'é', "'", '=', '+', '-', '@', '\t') }),
  );

  it('reads back as it was written, whatever the cells hold', () => {
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { maxLength: 5 }), (rows) => {
        expect(parsed(csvText(rows)).map((row) => row.map(textOf))).toEqual(rows);
      }),
      { seed: 61, numRuns: 1000 },
    );
  });

  it('holds no text a spreadsheet would reckon with, and leaves numbers numbers', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.oneof(cell, number), { minLength: 1, maxLength: 6 }), (row) => {
        const [read] = parsed(csvText([row]));
        row.forEach((one, at) => {
          if (typeof one === 'number') expect(Number(read![at])).toBeCloseTo(one, 5);
          else expect(read![at]).not.toMatch(RECKONED);
        });
      }),
      { seed: 63, numRuns: 1000 },
    );
  });

  it.each([
    ['=1+1', `"'=1+1"\r\n`],
    ['+44', `"'+44"\r\n`],
    ['-night-', `"'-night-"\r\n`],
    ['@home', `"'@home"\r\n`],
    ['\ttab', `"'\ttab"\r\n`],
    ['\rline', `"'\rline"\r\n`],
    ["'=was kept off", `"''=was kept off"\r\n`],
    ["'plain'", "'plain'\r\n"],
    ['rust - red', 'rust - red\r\n'],
  ])('writes %j as text', (text, written) => {
    expect(csvText([[text]])).toBe(written);
    expect(csvText([[-2.5]])).toBe('-2.5\r\n');
  });

  it('writes numbers with a point and leaves out what is none', () => {
    expect(csvText([[1.5, 0.1 + 0.2, Number.NaN]])).toBe('1.5,0.3,\r\n');
  });
});

describe('bolts', () => {
  it('hold all kits, and one bolt fewer would not', () => {
    const depths = fc.array(
      fc.integer({ min: 4, max: 40 }).map((count) => count / 4),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(
        depths,
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 36, max: 600 }),
        (strips, count, bolt) => {
          const inches = strips.reduce((sum, one) => sum + one, 0);
          const order = boltsFor(count, { inches, strips }, bolt, 1)!;
          expect(order.left).toBeGreaterThanOrEqual(-1e-9);
          expect(order.bolts * (bolt - 1)).toBeGreaterThanOrEqual(count * inches - 1e-9);
          // Every bolt loses an inch at its start, so that much more than the kits hold comes off the cloth.
          expect(order.taken).toBeCloseTo(count * inches + order.bolts, 9);
          if (order.kitsPerBolt > 0) {
            expect((order.bolts - 1) * order.kitsPerBolt).toBeLessThan(count);
            expect(order.kitsPerBolt * inches).toBeLessThanOrEqual(bolt - 1 + 1e-9);
            expect((order.kitsPerBolt + 1) * inches).toBeGreaterThan(bolt - 1 - 1e-6);
          }
        },
      ),
      { seed: 62 },
    );
  });

  it('of 540" give 14 kits of 38 1/2", so 30 kits take three and leave 462" on the last', () => {
    expect(boltsFor(30, { inches: 38.5, strips: [38.5] }, 540, 1)).toEqual({
      bolts: 3,
      kitsPerBolt: 14,
      taken: 1158,
      left: 462,
    });
  });

  it('shorter than one strip give nothing', () => {
    expect(boltsFor(2, { inches: 60, strips: [60] }, 50, 1)).toBeNull();
  });
});

describe('kits', () => {
  it('hold every strip of the layout once, labelled, each label once', () => {
    const project = unpriced();
    const made = kits(project);
    const strips = made.fabrics.flatMap((one) => one.strips);
    expect(new Set(strips.map((one) => one.label)).size).toBe(strips.length);
    for (const one of made.fabrics) {
      const inches = one.strips.reduce((sum, strip) => sum + strip.count * strip.width, 0);
      expect(inches).toBeCloseTo(one.inches, 9);
      expect(one.order!.bolts * project.buying.kits.bolt).toBeGreaterThanOrEqual(one.inches * made.count);
    }
    const sewn = project.stripSets.flatMap((set) => set.strips).length;
    const forSets = strips.filter((one) => one.uses.some((use) => use.say.startsWith('Strips for')));
    expect(forSets.reduce((sum, one) => sum + one.count, 0)).toBeGreaterThanOrEqual(sewn);
  });

  it('do not count what happens to be on hand', () => {
    const project = unpriced();
    const bare = { ...project, stripsOnHand: [], clothOnHand: [] };
    expect(kits(project).fabrics.map((one) => one.inches)).toEqual(
      kits(bare).fabrics.map((one) => one.inches),
    );
  });

  it('cost the sum of their cloth and what is beside it', () => {
    const project = unpriced();
    project.buying.price = 11.9;
    project.buying.kits.extra = 7.5;
    const dear = project.fabrics[1]!;
    dear.price = 14.2;
    const made = kits(project);
    const sum = made.fabrics.reduce(
      (total, one) => total + Math.round((one.inches / 36) * (one.fabric.id === dear.id ? 14.2 : 11.9) * 100),
      750,
    );
    expect(Math.round(made.price! * 100)).toBe(sum);
    project.buying.kits.backing = true;
    expect(kits(project).price!).toBeCloseTo(made.price! + kits(project).backing!.cost!, 6);
  });

  it('say which price is missing', () => {
    const project = unpriced();
    expect(kits(project).price).toBeNull();
    for (const fabric of project.fabrics.slice(1)) fabric.price = 10;
    expect(kits(project).unpriced.map((one) => speak(one))).toEqual([project.fabrics[0]!.name]);
  });

  it('sold as lengths are the lengths of the yardage, with fat quarters where they are cheaper', () => {
    const project = unpriced();
    project.buying.kits.cutAs = 'lengths';
    Object.assign(project.buying, { price: 12, fatQuarterPrice: 2 });
    const made = kits(project);
    expect(made.fabrics.some((one) => one.fatQuarters > 0)).toBe(true);
    for (const one of made.fabrics) {
      expect(one.strips).toEqual([]);
      expect((one.inches / 4.5) % 1).toBeCloseTo(0, 9);
    }
  });

  it('cost the same by the metre at the same price of cloth', () => {
    const project = unpriced();
    project.buying.price = 9;
    const yards = kits(project).price!;
    project.buying.soldBy = 'metre';
    project.buying.price = 9 / 0.9144;
    // A line that comes to half a cent may go up in one and down in the other: the price of a metre is no decimal.
    const made = kits(project);
    expect(Math.abs(made.price! - yards)).toBeLessThanOrEqual(0.01 * made.fabrics.length + 1e-9);
  });
});

describe('a set known from its sewn wedges alone', () => {
  const project = unpriced();
  const [first, ...others] = project.stripSets;
  const sewn = { ...first!, length: 0, progress: 'cut' as const, cut: { up: 6, down: 5 } };
  const quilt = { ...project, stripSets: [sewn, ...others] };
  const said =
    'Set A is known by its sewn wedges only: its length is not on record, and its strips are not counted.';

  it('has no strips in the list, where that is said, instead of strips without a length', () => {
    const whole = yardage(quilt, 'whole');
    const lengths = whole.fabrics.flatMap(({ lines }) =>
      lines.flatMap(({ pieces }) => pieces.map(({ width }) => width)),
    );
    expect(Math.min(...lengths)).toBeGreaterThan(0);
    const without = yardage({ ...project, stripSets: others }, 'whole');
    expect(whole.fabrics.map(({ buy }) => buy)).toEqual(without.fabrics.map(({ buy }) => buy));
    expect(whole.remarks.map((one) => speak(one))).toContain(said);
    // It is sewn: of what is left there is nothing to say.
    expect(yardage(quilt, 'left').remarks).toEqual([]);
  });

  it('is missing from a kit, which says so, as it says what else of the quilt is not in it', () => {
    expect(kits(quilt).remarks.map((one) => speak(one))).toEqual([said]);
    expect(kits(project).remarks).toEqual([]);
  });
});

describe('precut strips', () => {
  it('of 2 1/2" split into 1 1/2" and 1", and a 2" strip takes one of its own', () => {
    const strips = [1.5, 1, 1.5, 1, 2].map((width) => ({ fabric: 'f2', width }));
    expect(precutStrips(projectOf({ stripSets: [stripSet('a', strips)] }))?.strips).toBe(3);
  });

  it('are counted for each fabric, so that they can be ordered, and their rolls by what a roll holds', () => {
    const of = (fabric: string) => [1.5, 1, 1.5].map((width) => ({ fabric, width }));
    const precuts = precutStrips(projectOf({ stripSets: [stripSet('a', [...of('f2'), ...of('f1')])] }))!;
    expect(precuts.perFabric.map(({ fabric, strips }) => [fabric.id, strips])).toEqual([
      ['f1', 2],
      ['f2', 2],
    ]);
    // 4 strips a quilt, 12 quilts: 48, two rolls of 40 (Nebraska Extension / Nebraska 4-H fair book), three of 20.
    expect(leastRolls(precuts, 12, 40)).toBe(2);
    expect(leastRolls(precuts, 12, 20)).toBe(3);
    expect(leastRolls(precuts, 12, 48)).toBe(1);
  });

  it('are no way to sets with wider strips', () => {
    const strips = [{ fabric: 'f2', width: 3 }];
    expect(precutStrips(projectOf({ stripSets: [stripSet('a', strips)] }))).toBeNull();
  });
});

describe('the tables of the kits', () => {
  it('order for all kits what is cut off to straighten too: of one kit in strips what the cutting list buys', () => {
    // 26" in strips and 1" to straighten them: 27", and not 26", is 3/4 yd.
    const strips = Array.from({ length: 13 }, () => ({ fabric: 'f2', width: 2 }));
    const project = projectOf({ stripSets: [stripSet('a', strips)] });
    Object.assign(project.buying.kits, { count: 1, cutAs: 'strips' });
    const rows = parsed(orderCsv(project, kits(project), (words) => speak(words)));
    const [heads, order] = [
      rows[0]!,
      rows.find((row) => row[1] === project.fabrics.find(({ id }) => id === 'f2')!.name)!,
    ];
    expect(order[heads.indexOf('Per kit (yd)')]).toBe('0.722');
    expect(order[heads.indexOf('All kits (yd)')]).toBe('0.75');
    const bought = yardage(project, 'whole').fabrics.find(({ fabric }) => fabric.id === 'f2')!.buy;
    expect(bought).toEqual({ kind: 'length', inches: 27 });
  });

  it('have a row for each fabric and each kind of strip, all rows alike long', () => {
    const project = unpriced();
    project.fabrics[1]!.name = 'Night, "deep"\nand blue';
    project.buying.price = 10;
    const made = kits(project);
    project.fabrics[2]!.name = '=HYPERLINK("x")';
    const order = parsed(orderCsv(project, made, (sentence) => speak(sentence)));
    expect(order).toHaveLength(made.fabrics.length + 2);
    expect(new Set(order.map((row) => row.length)).size).toBe(1);
    expect(order.map((row) => row[1])).toContain('Night, "deep"\nand blue');
    expect(Number(order.at(-1)!.at(-1))).toBe(made.price);
    const strips = parsed(stripsCsv(project, made, (sentence) => speak(sentence, 'in')));
    for (const table of [order, strips]) {
      expect(table.map((row) => row[1])).toContain(`'=HYPERLINK("x")`);
      expect(table.flat().filter((one) => RECKONED.test(one))).toEqual([]);
    }
    expect(strips).toHaveLength(made.fabrics.flatMap((one) => one.strips).length + 1);
    expect(strips.slice(1).every((row) => Number(row[2]) * made.count === Number(row[6]))).toBe(true);
  });
});
