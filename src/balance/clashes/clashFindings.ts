// Turns clashes into findings: a few of a kind get a sentence each, many get one together, so that the list stays short.
import type { BoundaryPart } from '../../geometry/lattice';
import { rimLength, seamLength } from '../../geometry/wedge';
import { findFabric } from '../../model/find';
import { type Phrase, type PhraseValue, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { CLASH_KINDS, type ClashKind, type Finding } from '../finding';
import type { Clash } from './clashes';

/** So many of a kind are said one by one; more are told in one sentence that names the heaviest. */
const SINGLES = 3;

/** How loud a kind is: a whole rim (for radial: a whole seam) of plain clash weighs this much, 0–1. */
const LOUDNESS: Readonly<Record<ClashKind, number>> = { rim: 0.9, facing: 0.8, setting: 0.45, radial: 0.9 };

/** Clashes that count as fewer inches than this part of the full length of their kind are not worth a sentence. */
const LEAST_PART: Readonly<Record<ClashKind, number>> = { rim: 0, facing: 0.15, setting: 0.5, radial: 0.3 };

/** Look-alikes below this likeness stay in the list of clashes, without a sentence. */
const TOLD_LIKENESS = 0.5;

/** Findings for the clashes, unsorted. */
export function clashFindings(project: Project, clashes: readonly Clash[]): Finding[] {
  return CLASH_KINDS.flatMap((kind) => {
    const told = clashes
      .filter((clash) => clash.kind === kind && clash.likeness >= TOLD_LIKENESS)
      .filter((clash) => partOf(project, clash) >= LEAST_PART[kind])
      .sort((one, other) => other.weight - one.weight);
    if (told.length <= SINGLES) return told.map((clash) => clashFinding(project, clash));
    return [together(project, kind, told)];
  });
}

function partOf({ wedge }: Project, clash: Clash): number {
  return clash.weight / (clash.kind === 'radial' ? seamLength(wedge) : rimLength(wedge));
}

function weightOf(project: Project, clash: Clash): number {
  if (clash.kind === 'rim') return LOUDNESS.rim * clash.likeness;
  return LOUDNESS[clash.kind] * Math.min(1, partOf(project, clash));
}

/** A clash as a finding of its own, also where it is too small for a list of the few. */
export function clashFinding(project: Project, clash: Clash): Finding {
  return {
    id: clash.id,
    kind: clash.kind,
    weight: weightOf(project, clash),
    measure: { value: clash.inches, unit: 'in' },
    words: clashWords(project, clash),
    measured: measuredWords(project, clash),
    clashes: [clash.id],
    blocks: clash.blocks,
    fabrics: clash.fabrics[0] === clash.fabrics[1] ? [clash.fabrics[0]] : clash.fabrics,
    marks: clash.marks,
  };
}

/** A clash as a sentence, for lists. */
export function clashWords(project: Project, clash: Clash): Phrase {
  const name = (id: string) => findFabric(project, id)?.name ?? id;
  const values: Record<string, PhraseValue> = {
    a: clash.numbers[0]!,
    b: clash.numbers[1] ?? clash.numbers[0]!,
    place: clash.places[0] ?? 0,
    next: clash.places[1] ?? 0,
    length: { inches: clash.inches },
    fabric: name(clash.fabrics[0]),
    other: name(clash.fabrics[1]),
  };
  const same = clash.fabrics[0] === clash.fabrics[1];
  return phrase(same ? SAME[sayingOf(clash)] : ALIKE[sayingOf(clash)], values);
}

/** How long, of how much, and what it counts as where that is less. */
function measuredWords({ wedge }: Project, clash: Clash): Phrase {
  const along = clash.kind === 'rim' || clash.kind === 'radial';
  const corners = clash.kind === 'facing' && clash.places.length === 0;
  const whole = along ? seamLength(wedge) : rimLength(wedge);
  const say = corners
    ? '{length} of their edges'
    : along
      ? '{length} of a seam of {whole}'
      : clash.inches > whole - LIKE
        ? 'A whole rim of {whole}'
        : '{length} of a rim of {whole}';
  const long = phrase(say, { length: { inches: clash.inches }, whole: { inches: whole } });
  const overSashing = clash.weight / clash.inches / clash.likeness < 1 - 1e-9;
  if (clash.likeness === 1 && !overSashing) return long;
  return phrase(clash.likeness === 1 ? OVER_SASHING : overSashing ? ALIKE_OVER_SASHING : LESS_ALIKE, {
    long,
    counts: { inches: clash.weight },
    percent: Math.round(100 * clash.likeness),
  });
}

/** Lengths closer than this are written alike. */
const LIKE: Inches = 1 / 32;

const OVER_SASHING = '{long}; across the sashing it counts as {counts}';
const LESS_ALIKE = '{long}; {percent}% alike, it counts as {counts}';
const ALIKE_OVER_SASHING = '{long}; {percent}% alike and across the sashing, it counts as {counts}';

type Saying = 'rim' | 'radial' | 'facing' | 'corners' | 'corner' | BoundaryPart;

function sayingOf(clash: Clash): Saying {
  if (clash.kind === 'setting') return clash.settingPart!;
  return clash.kind === 'facing' && clash.places.length === 0 ? 'corners' : clash.kind;
}

const SAME: Readonly<Record<Saying, string>> = {
  rim: 'Block {a}: places {place} and {next} both have {fabric} on the rim.',
  radial: 'Block {a}: {fabric} meets itself between places {place} and {next} along {length}.',
  facing: 'Blocks {a} and {b} meet with the same {fabric} along {length}.',
  corners: 'Blocks {a} and {b} meet with the same {fabric} on their corners along {length}.',
  corner: 'Block {a}, place {place}: the rim is the same {fabric} as its corner triangle, along {length}.',
  sashing: 'Block {a}, place {place}: the rim runs into the sashing, both {fabric}, along {length}.',
  border: 'Block {a}, place {place}: the rim runs into the border, both {fabric}, along {length}.',
  plain: 'Block {a}, place {place}: the rim runs into the plain square, both {fabric}, along {length}.',
  triangle:
    'Block {a}, place {place}: the rim runs into the setting triangle, both {fabric}, along {length}.',
};

const ALIKE: Readonly<Record<Saying, string>> = {
  rim: 'Block {a}: {fabric} and {other} read as one on the rims of places {place} and {next}.',
  radial: 'Block {a}: {fabric} and {other} read as one between places {place} and {next} along {length}.',
  facing: 'Blocks {a} and {b} meet with {fabric} and {other}, which read as one, along {length}.',
  corners: 'Blocks {a} and {b} meet with corners of {fabric} and {other}, which read as one, along {length}.',
  corner: 'Block {a}, place {place}: {fabric} and its corner triangle of {other} read as one along {length}.',
  sashing: 'Block {a}, place {place}: {fabric} and the sashing of {other} read as one along {length}.',
  border: 'Block {a}, place {place}: {fabric} and the border of {other} read as one along {length}.',
  plain: 'Block {a}, place {place}: {fabric} and the plain square of {other} read as one along {length}.',
  triangle:
    'Block {a}, place {place}: {fabric} and the setting triangle of {other} read as one along {length}.',
};

const TOGETHER: Readonly<Record<ClashKind, string>> = {
  rim: 'In {count} places a fabric meets itself or its look-alike on neighbouring rims, first in block {a}.',
  facing:
    '{count} pairs of blocks meet with the same or a look-alike fabric, {length} in all, first blocks {a} and {b}.',
  radial:
    'Along {count} seams inside the blocks a fabric meets itself or its look-alike, {length} in all, first in block {a}.',
  setting: '{count} rims run into what surrounds them, {length} in all, first in block {a}.',
};

/** Many of a kind, heaviest first, as one finding. */
function together(project: Project, kind: ClashKind, clashes: readonly Clash[]): Finding {
  const length: Inches = clashes.reduce((sum, clash) => sum + clash.inches, 0);
  const { numbers } = clashes[0]!;
  return {
    id: `${kind}:together`,
    kind,
    weight: weightOf(project, clashes[0]!),
    measure: { value: length, unit: 'in' },
    words: phrase(TOGETHER[kind], {
      count: clashes.length,
      length: { inches: length },
      a: numbers[0]!,
      b: numbers[1] ?? numbers[0]!,
    }),
    measured: lengthWords(clashes),
    clashes: clashes.map((clash) => clash.id),
    blocks: [...new Set(clashes.flatMap((clash) => clash.blocks))],
    fabrics: [...new Set(clashes.flatMap((clash) => clash.fabrics))],
    marks: clashes.flatMap((clash) => clash.marks),
  };
}

function lengthWords(clashes: readonly Clash[]): Phrase {
  const lengths = clashes.map((clash) => clash.inches);
  const least = Math.min(...lengths);
  const most = Math.max(...lengths);
  return phrase(
    most - least < LIKE ? '{all} in all, {least} each' : '{all} in all, from {least} to {most} each',
    {
      all: { inches: lengths.reduce((sum, length) => sum + length, 0) },
      least: { inches: least },
      most: { inches: most },
    },
  );
}
