// Why strips are left once sets are made: for each the rule that leaves it. A rule is named only where a set with that strip could
// be laid without it; where no rule stands in the way too few strips are left.
import { cutWidth, finishedWidth } from '../../geometry/stripSet';
import { HAIR, isTooNarrow, total } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Fabric, StripOnHand, WedgePlan } from '../../model/project';
import type { InParts } from '../../model/work/parts';
import { leastLength } from '../wedges/setKinds';
import { ALL_RULES, canBeLaid, makesOneMore, oneMoreSet } from './oneMoreSet';
import { MOST_SETS } from './setTarget';
import { stripKey } from './stripsUnused';

/**
 * narrow: vanishes in its seams. short: too short for two wedges. neighbours: a fabric would lie beside itself. lengths: a set as
 * long as its shortest strip would be too short. both: the last two together. enough: a set could be laid and is not wanted.
 * limit: nor made in one go. few: none of these.
 */
export type LeavingRule =
  | 'narrow' | 'short' | 'neighbours' | 'lengths' | 'both' | 'enough' | 'limit' | 'few'; // biome-ignore format: short

/** The strips that one rule leaves, and the sentence that says so. */
export interface StripsLeft {
  readonly rule: LeavingRule;
  readonly rows: readonly StripOnHand[];
  /** The rule in words, and the sentence with the strips it leaves. */
  readonly why: Phrase;
  readonly words: Phrase;
}

interface Leaving {
  readonly rule: LeavingRule;
  /** For neighbours: the fabric that would lie beside itself. */
  readonly fabric?: string;
}

const ORDER: readonly LeavingRule[] = [
  'enough',
  'limit',
  'neighbours',
  'lengths',
  'both',
  'few',
  'short',
  'narrow',
];

/** The strips left by the rule that leaves them; `all` where as many sets were wanted as can be. */
export function* findingWhyLeft(
  left: readonly StripOnHand[],
  fabrics: readonly Fabric[],
  wedge: WedgePlan,
  all: boolean,
): InParts<StripsLeft[]> {
  const groups = new Map<string, Leaving & { rows: StripOnHand[] }>();
  for (const row of left) {
    yield null;
    const leaving = ruleFor(row, left, wedge, all);
    const key = `${leaving.rule} ${leaving.fabric ?? ''}`;
    const group = groups.get(key) ?? { ...leaving, rows: [] };
    group.rows.push(row);
    groups.set(key, group);
  }
  const names = new Map(fabrics.map(({ id, name }) => [id, name]));
  const nameOf = (fabric: string) => names.get(fabric) ?? '';
  return [...groups.values()]
    .sort((one, other) => ORDER.indexOf(one.rule) - ORDER.indexOf(other.rule))
    .map(({ rule, fabric, rows }) => {
      const why = whyWords(rule, nameOf(fabric ?? ''), left, wedge);
      return { rule, rows, why, words: leftWords(rows, nameOf, why, rule === 'short' || rule === 'lengths') };
    });
}

function ruleFor(row: StripOnHand, left: readonly StripOnHand[], wedge: WedgePlan, all: boolean): Leaving {
  if (isTooNarrow(row.width, wedge.seam)) return { rule: 'narrow' };
  if (row.length < leastLength(wedge) - HAIR) return { rule: 'short' };
  if (makesOneMore(left, wedge, ALL_RULES, row)) return { rule: all ? 'limit' : 'enough' };
  const beside = oneMoreSet(left, wedge, { ...ALL_RULES, neighboursDiffer: false }, row);
  if (beside) return { rule: 'neighbours', fabric: mostOf(beside) };
  if (makesOneMore(left, wedge, { ...ALL_RULES, lengths: false }, row)) return { rule: 'lengths' };
  const both = oneMoreSet(left, wedge, { neighboursDiffer: false, lengths: false }, row);
  return both ? { rule: 'both', fabric: mostOf(both) } : { rule: 'few' };
}

/** The fabric of most strips. */
function mostOf(strips: readonly StripOnHand[]): string {
  const counts = new Map<string, number>();
  for (const { fabric } of strips) counts.set(fabric, (counts.get(fabric) ?? 0) + 1);
  return [...counts].reduce((most, one) => (one[1] > most[1] ? one : most))[0];
}

function whyWords(rule: LeavingRule, fabric: string, left: readonly StripOnHand[], wedge: WedgePlan): Phrase {
  switch (rule) {
    case 'narrow':
      return phrase('cut {least} wide or less, a strip vanishes in its two seams', {
        least: { atMost: cutWidth(0, wedge.seam) },
      });
    case 'short':
      return phrase('shorter than {least}, which a set needs for two wedges', {
        least: { atLeast: leastLength(wedge) },
      });
    case 'neighbours':
      return phrase('in one more set {fabric} would lie beside itself', { fabric });
    case 'lengths':
      return phrase('one more set, as long as its shortest strip, would be too short for two wedges');
    case 'both':
      return phrase(
        'in one more set {fabric} would lie beside itself, and as long as its shortest strip it would be too short for two wedges',
        { fabric },
      );
    case 'enough':
      return phrase('the sets wanted are made without them');
    case 'limit':
      return phrase('no more than {count} sets are made in one go', { count: MOST_SETS });
    case 'few':
      return fewWords(left, wedge);
  }
}

/** How high all strips left that can be laid would be together, and how high a set has to be. One strip is as high as it is wide. */
function fewWords(left: readonly StripOnHand[], wedge: WedgePlan): Phrase {
  const laid = left.filter((row) => canBeLaid(row, wedge));
  const gain = total(laid.map((row) => row.count * finishedWidth(row.width, wedge.seam)));
  return counted(
    total(laid.map((row) => row.count)),
    'one strip is too few for one more set: it is {height} wide, and a set is {least} high',
    'too few strips are left for one more set: sewn together they are {height} high, and a set is {least}',
    { height: { inches: cutWidth(gain, wedge.seam) }, least: { inches: wedge.cutHeight } },
  );
}

/** 'Left: 3 strips of Night ink 1 1/4", 1 of Plum 2": why.' Strips alike in fabric and width are counted together. */
function leftWords(
  rows: readonly StripOnHand[],
  nameOf: (fabric: string) => string,
  why: Phrase,
  withLength: boolean,
): Phrase {
  const alike = new Map<string, StripOnHand>();
  for (const row of rows) {
    const key = stripKey(row.fabric, row.width) + (withLength ? ` ${row.length}` : '');
    const same = alike.get(key);
    alike.set(key, same ? { ...same, count: same.count + row.count } : row);
  }
  const strips = [...alike.values()].map(({ fabric, width, length, count }, at) => {
    const values = { fabric: nameOf(fabric), width: { inches: width }, length: { inches: length } };
    const size = withLength ? '{width} × {length}' : '{width}';
    if (at > 0) return phrase(`{count} of {fabric} ${size}`, { ...values, count });
    return counted(count, `1 strip of {fabric} ${size}`, `{count} strips of {fabric} ${size}`, values);
  });
  const all = strips.reduce((said, one) => phrase('{said}, {one}', { said, one }));
  return phrase('Left: {strips}: {why}.', { strips: all, why });
}
