// Turns the spread of fabrics and the lean of the whole top into findings, where both the eye and the odds make one worth it.
import { findFabric } from '../../model/find';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { type Figure, figureOf } from '../../model/words/figure';
import type { Finding } from '../finding';
import type { Intent } from '../score/intent';
import { directionWords, positionWords } from '../wall/position';
import { upperNormal } from './clustering';
import type { FabricSpread } from './fabricSpread';
import { offsetWords } from './fabricWords';
import { accidentWords } from './odds';
import { type Lean, leanMark, type WholeTop } from './wholeTop';

/** Only fabrics that stand out are asked about: this many times the mean dominance, and at most so many. */
const STANDS_OUT = 1.5;
const ASKED = 3;
/** Odds for all fabrics asked about together. */
const FABRIC_ODDS = 0.02;
/** Share in one quarter from which it shows. */
const LEAST_QUARTER = 0.36;

/** The fabric that stands out most from what surrounds it, area for area; null for an empty wall. */
export function dominantFabric(project: Project, spreads: readonly FabricSpread[]): FabricSpread | null {
  return ranked(project, spreads)[0] ?? null;
}

function ranked(project: Project, spreads: readonly FabricSpread[]): FabricSpread[] {
  return spreads
    .filter((one) => !findFabric(project, one.fabric)?.background)
    .toSorted((one, other) => other.dominance - one.dominance);
}

/** A finding for each fabric that stands out and lies mostly in one part of the top. */
export function fabricFindings(project: Project, spreads: readonly FabricSpread[]): Finding[] {
  const standing = ranked(project, spreads)
    .filter((one) => one.dominance * spreads.length >= STANDS_OUT)
    .slice(0, ASKED);
  return standing.flatMap((one): Finding[] => {
    const share = Math.max(...one.quarters);
    if (upperNormal(one.clustering.z) * standing.length > FABRIC_ODDS || share < LEAST_QUARTER) return [];
    const quarter = one.quarters.indexOf(share);
    const where = positionWords({ x: quarter % 2, y: Math.floor(quarter / 2) }, { width: 1, height: 1 });
    return [
      {
        id: `fabric:${one.fabric}`,
        kind: 'fabric-spread',
        weight: Math.min(1, 0.3 + 0.6 * (share - 0.25) + 0.5 * one.dominance),
        measure: { value: share / 0.25, unit: 'ratio' },
        words: phrase('{fabric} stands out and clusters {where}: {percent}% of it lies in that quarter.', {
          fabric: findFabric(project, one.fabric)!.name,
          where,
          percent: Math.round(100 * share),
        }),
        measured: phrase('{share}% in one quarter, where 25% would be even; {accident}', {
          share: Math.round(100 * share),
          accident: accidentWords(upperNormal(one.clustering.z)),
        }),
        clashes: [],
        blocks: [],
        fabrics: [one.fabric],
        marks: [],
      },
    ];
  });
}

/** A lean is told when the odds are long and the halves differ visibly, or when they differ by a whole step at fair odds. */
const LEANS = {
  light: { seen: 3, step: 10 },
  warmth: { seen: 0.12, step: 0.4 },
} as const;

/** Findings for a top that is lighter or warmer on one side, unless that is what the person wants. */
export function leanFindings(top: WholeTop, intent: Intent): Finding[] {
  const findings: Finding[] = [];
  if (intent.value === 'scattered' && leans(top.light, LEANS.light)) {
    findings.push(
      leanFinding('light', top, LEANS.light.step, 'L*', {
        say: 'Lights lean towards the {direction}: the halves differ by {steps} steps of value.',
        steps: figureOf(top.light.difference / 10, 1),
      }),
    );
  }
  if (intent.colour === 'scattered' && leans(top.warmth, LEANS.warmth)) {
    findings.push(
      leanFinding('warmth', top, LEANS.warmth.step, 'warmth', {
        say: 'Warm colours lean towards the {direction}: the halves differ by {steps} on the scale of warmth.',
        steps: figureOf(top.warmth.difference, 2),
      }),
    );
  }
  return findings;
}

function leans(lean: Lean, least: { readonly seen: number; readonly step: number }): boolean {
  return (
    (lean.p <= 0.01 && lean.difference >= least.seen) || (lean.p <= 0.1 && lean.difference >= least.step)
  );
}

function leanFinding(
  of: 'light' | 'warmth',
  top: WholeTop,
  step: number,
  unit: 'L*' | 'warmth',
  words: { readonly say: string; readonly steps: Figure },
): Finding {
  const lean = top[of];
  const mark = leanMark(top, of);
  return {
    id: `lean:${of === 'light' ? 'lightness' : 'warmth'}`,
    kind: 'whole-top',
    weight: Math.min(1, 0.25 + 0.35 * (lean.difference / step)),
    measure: { value: lean.difference, unit },
    words: phrase(words.say, { direction: directionWords(lean.toward.x, lean.toward.y), steps: words.steps }),
    measured: leanWords(of, lean),
    clashes: [],
    blocks: [],
    fabrics: [],
    marks: mark ? [mark] : [],
  };
}

/** Where the centre of lightness or warmth lies, how far the halves differ, and how often chance does as much. */
export function leanWords(of: 'light' | 'warmth', lean: Lean): Phrase {
  return phrase(
    of === 'light'
      ? 'Lights balance {where}; the halves differ by {difference} steps of value, {accident}'
      : 'Warm colours balance {where}; the halves differ by {difference} on the scale of warmth, {accident}',
    {
      where: offsetWords(lean.offset),
      difference: of === 'light' ? figureOf(lean.difference / 10, 1) : figureOf(lean.difference, 2),
      accident: accidentWords(lean.p),
    },
  );
}
