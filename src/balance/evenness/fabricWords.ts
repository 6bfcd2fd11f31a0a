// A fabric's spread in words, each figure beside what chance or an even spread would give.
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Inches } from '../../model/units';
import { figureOf } from '../../model/words/figure';
import { type Direction, directionOf } from '../wall/position';
import type { Autocorrelation } from './autocorrelation';
import type { FabricSpread } from './fabricSpread';

/** So many standard deviations off is more than chance: about 1 in 40 on either side. */
const TELLING = 2;
/** Closer to the middle than this is in the middle. */
const NO_DISTANCE: Inches = 1 / 16;

/** Where something lies from the middle of what hangs, offset x to the right and y down. */
export function offsetWords(offset: { readonly x: Inches; readonly y: Inches }): Phrase {
  const inches = Math.hypot(offset.x, offset.y);
  if (inches < NO_DISTANCE) return phrase('in the very middle');
  return phrase(OFFSETS[directionOf(offset.x, offset.y)], { length: { inches } });
}

const OFFSETS: Readonly<Record<Direction, string>> = {
  right: '{length} to the right of the middle',
  lowerRight: '{length} to the lower right of the middle',
  bottom: '{length} below the middle',
  lowerLeft: '{length} to the lower left of the middle',
  left: '{length} to the left of the middle',
  upperLeft: '{length} to the upper left of the middle',
  top: '{length} above the middle',
  upperRight: '{length} to the upper right of the middle',
};

/** What there is to say of a fabric, in the order people ask: how much, where, how even, how near, how often it meets itself. */
export function spreadWords(
  spread: FabricSpread,
  middle: { readonly x: Inches; readonly y: Inches },
): Phrase[] {
  const { centre, quarters } = spread;
  return [
    phrase('{area}, {percent}% of the fabric in the wedges: {pieces} in {wedges}.', {
      area: { squareInches: spread.area },
      percent: percent(spread.share),
      pieces: counted(spread.pieces, '1 piece', '{count} pieces'),
      wedges: counted(spread.wedges, '1 wedge', '{count} wedges'),
    }),
    phrase('Its centre lies {where}.', {
      where: offsetWords({ x: centre.x - middle.x, y: centre.y - middle.y }),
    }),
    phrase(
      'Quarters: {upperLeft}% upper left, {upperRight}% upper right, {lowerLeft}% lower left, {lowerRight}% lower right; {even}% even.',
      {
        upperLeft: percent(quarters[0]),
        upperRight: percent(quarters[1]),
        lowerLeft: percent(quarters[2]),
        lowerRight: percent(quarters[3]),
        even: percent(spread.evenness),
      },
    ),
    nearestWords(spread),
    joinWords(spread.rims, spread.joins.both),
  ];
}

function percent(share: number): number {
  return Math.round(100 * share);
}

function nearestWords({ nearest, wedges }: FabricSpread): Phrase {
  if (!nearest) {
    return counted(
      wedges,
      'In 1 wedge only: too few to say how far apart they lie.',
      'In {count} wedges only: too few to say how far apart they lie.',
    );
  }
  return phrase(
    'From a wedge with it to the next, middle to middle: {mean} on average; in a random layout {byChance}.',
    { mean: { inches: nearest.mean }, byChance: { inches: nearest.byChance } },
  );
}

function joinWords(rims: number, both: Autocorrelation): Phrase {
  if (rims < 2) {
    return phrase(rims === 0 ? 'It lies on no rim.' : 'It lies on one rim, so it cannot meet itself there.');
  }
  const say =
    both.z >= TELLING
      ? 'It clusters: on {rims} rims, and neighbours both have it {count} times; in a random layout {expected}.'
      : both.z <= -TELLING
        ? 'It is well apart: on {rims} rims, and neighbours both have it {count} times; in a random layout {expected}.'
        : 'It is neither clustered nor apart: on {rims} rims, and neighbours both have it {count} times; in a random layout {expected}.';
  return phrase(say, {
    rims,
    count: Math.round(both.statistic),
    expected: figureOf(both.expected, 1),
  });
}

/** Why the dominant fabric is the one: contrast × area. Contrast is told on OKLab × 100, where 2 is just seen. */
export function dominanceWords(spread: FabricSpread): Phrase {
  return phrase(
    'It stands out most, by area and contrast: {contrast} away from the fabrics round it in value and colour, where 2 is just visible.',
    { contrast: Math.round(100 * spread.contrast) },
  );
}
