// Pools as sentences: those that can be seen from across the room, each part of the top told once.
import { findBlock } from '../../model/find';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { figureOf } from '../../model/words/figure';
import type { Finding } from '../finding';
import { positionWords } from '../wall/position';
import type { WallModel } from '../wall/wallModel';
import { accidentWords } from './odds';
import type { Pool } from './pools';

/** Less than half a step of the ten-step value scale is not seen across the room; OKLab: about one just noticeable step. */
const LEAST_DIFFERENCE = { value: 5, colour: 0.02 } as const;
/** Fewer wedges than a block holds are a patch of their own making, not a pool. */
const LEAST_WEDGES = 6;
/** So many of value, and of colour, are told; the heaviest. */
const TOLD = 2;

/** Findings for the pools, unsorted. */
export function poolFindings(
  project: Project,
  model: WallModel,
  pools: readonly Pool[],
  size: { readonly width: number; readonly height: number },
): Finding[] {
  const visible = pools.filter(isVisible);
  const value = visible.filter((pool) => pool.figure === 'value');
  const colour = visible.filter((pool) => pool.figure !== 'value');
  return [...eachPlaceOnce(value), ...eachPlaceOnce(colour)].map((pool) =>
    finding(project, model, pool, size),
  );
}

function isVisible(pool: Pool): boolean {
  if (pool.scale === 'wedge' && (pool.size < LEAST_WEDGES || pool.blocks.length < 2)) return false;
  // A group larger than half of the top is the rule, not the exception; the whole-top weight speaks of it.
  if (pool.size > pool.of / 2) return false;
  return strength(pool) >= 1;
}

/** How often the least visible difference it makes, 1 and up for what is seen. */
function strength(pool: Pool): number {
  return pool.figure === 'value'
    ? Math.abs(pool.difference) / LEAST_DIFFERENCE.value
    : Math.hypot(pool.differences[1], pool.differences[2]) / LEAST_DIFFERENCE.colour;
}

/** 0–1: grows with the visible difference and with the part of the top it takes, full at a quarter of it. */
function weightOf(pool: Pool): number {
  const part = Math.min(1, Math.sqrt((4 * pool.size) / pool.of));
  return Math.min(1, 0.25 + (0.2 * strength(pool) * part) / 1.5);
}

/** Blocks and tiles before wedges, the heaviest first; nothing in a block that has been told of. */
function eachPlaceOnce(pools: readonly Pool[]): Pool[] {
  const told: Pool[] = [];
  for (const pool of pools.toSorted(
    (one, other) =>
      Number(one.scale === 'wedge') - Number(other.scale === 'wedge') || weightOf(other) - weightOf(one),
  )) {
    const covered = told.some((other) => pool.blocks.some((block) => other.blocks.includes(block)));
    if (!covered && told.length < TOLD) told.push(pool);
  }
  return told;
}

function finding(
  project: Project,
  model: WallModel,
  pool: Pool,
  size: { readonly width: number; readonly height: number },
): Finding {
  const where = positionWords(pool.centre, size);
  const numbers = pool.blocks.map((block) => findBlock(project, block)!.number);
  const values = {
    count: countWords(pool.scale === 'wedge' ? pool.size : pool.blocks.length),
    where,
    blocks: { list: numbers },
  };
  const name = `${pool.scale}:${pool.figure}:${pool.high ? 'high' : 'low'}`;
  return {
    id: `pool:${name}:${pool.scale === 'wedge' ? pool.wedges[0]! : pool.blocks[0]!}`,
    kind: pool.figure === 'value' ? 'value-pool' : 'colour-pool',
    weight: weightOf(pool),
    measure:
      pool.figure === 'value'
        ? { value: pool.difference, unit: 'L*' }
        : { value: 100 * Math.hypot(pool.differences[1], pool.differences[2]), unit: 'ΔE' },
    words: phrase(saying(pool), { ...values, hue: hueWords(pool.differences[1], pool.differences[2]) }),
    measured: measuredWords(pool),
    clashes: [],
    blocks: pool.blocks,
    fabrics: poolFabrics(model, pool),
    marks: pool.outlines.map((outline) => ({ kind: 'pool', outline })),
  };
}

/** How many times the least visible difference is called clear. */
const CLEAR = 2;

function measuredWords(pool: Pool): Phrase {
  const accident = accidentWords(pool.p);
  const clear = strength(pool) >= CLEAR;
  if (pool.figure === 'value') {
    const lighter = clear ? 'Clearly lighter than the rest' : 'A little lighter than the rest';
    const darker = clear ? 'Clearly darker than the rest' : 'A little darker than the rest';
    return phrase('{much} ({difference} steps of value); {accident}', {
      much: phrase(pool.high ? lighter : darker),
      difference: figureOf(Math.abs(pool.difference) / 10, 1),
      accident,
    });
  }
  return phrase('{much} ({difference}, where 2 is just visible); {accident}', {
    much: phrase(
      clear ? 'Clearly a different colour from the rest' : 'A slightly different colour from the rest',
    ),
    difference: Math.round(100 * Math.hypot(pool.differences[1], pool.differences[2])),
    accident,
  });
}

function saying(pool: Pool): string {
  if (pool.figure === 'value') {
    if (pool.scale === 'wedge') {
      return pool.high
        ? '{count} light wedges together, {where}, in blocks {blocks}.'
        : '{count} dark wedges together, {where}, in blocks {blocks}.';
    }
    return pool.high ? '{count} light blocks together, {where}.' : '{count} dark blocks together, {where}.';
  }
  return pool.scale === 'wedge'
    ? '{count} wedges that lean to {hue} together, {where}, in blocks {blocks}.'
    : '{count} blocks that lean to {hue} together, {where}.';
}

const COUNTS = ['Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten', 'Eleven', 'Twelve'] as const; // biome-ignore format: a row

/** A count at the start of a sentence: in words up to twelve. */
function countWords(count: number): Phrase {
  return phrase(COUNTS[count - 2] ?? String(count));
}

/** Hue names round OKLab's circle, each up to its angle in degrees. */
const HUES: readonly (readonly [to: number, name: string])[] = [
  [10, 'pink'], [45, 'red'], [80, 'orange'], [120, 'yellow'], [170, 'green'], [220, 'turquoise'], [285, 'blue'], [330, 'purple'], [360, 'pink'],
]; // biome-ignore format: a ring

function hueWords(a: number, b: number): Phrase {
  const degrees = ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;
  return phrase(HUES.find(([to]) => degrees <= to)![1]);
}

/** The fabrics that do most to set the pool apart: for value pools by area times difference; up to three. */
function poolFabrics(model: WallModel, pool: Pool): string[] {
  const index = new Map(model.blocks.map((block, at) => [block, at]));
  const { fabricCount, cloths } = model;
  const axis = pool.figure === 'value' ? cloths.lightness : pool.figure === 'a' ? cloths.a : cloths.b;
  const middle = axis.reduce((sum, value) => sum + value, 0) / Math.max(1, axis.length);
  const pull = Array.from(axis, (value, fabric) => {
    const area = pool.blocks.reduce(
      (sum, block) => sum + model.fabricArea[index.get(block)! * fabricCount + fabric]!,
      0,
    );
    return { fabric, pull: area * (value - middle) * (pool.high ? 1 : -1) };
  });
  return pull
    .filter((one) => one.pull > 0)
    .toSorted((one, other) => other.pull - one.pull)
    .slice(0, 3)
    .map((one) => cloths.fabrics[one.fabric]!.id);
}
