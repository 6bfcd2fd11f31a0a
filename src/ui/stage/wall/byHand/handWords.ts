// The steps of a list of moves by hand in words: what is done in one go, and line by line which block goes where and how it is turned.

import type { Carry, HandStep, Spot } from '../../../../arrange/byHand/handSteps';
import { cellPlace } from '../../../../drawing/pattern/pages/cellPlace';
import type { HandList } from '../../../../editing/handList';
import { findBlock, turnsOf } from '../../../../model/find';
import { type Phrase, phrase } from '../../../../model/phrase';
import type { BlockId, Project } from '../../../../model/project';

/** What is done in one go. */
export function stepTitle(project: Project, { kind, carries }: HandStep): Phrase {
  const [first, second] = carries.map(({ block }) => numberOf(project, block));
  if (kind === 'turn') return phrase('Turn block {block}', { block: first! });
  if (kind === 'swap') return phrase('Swap blocks {first} and {second}', { first: first!, second: second! });
  if (carries.length === 1) return phrase('Move block {block}', { block: first! });
  return kind === 'round'
    ? phrase('Move {count} blocks round', { count: carries.length })
    : phrase('Move {count} blocks, one after the other', { count: carries.length });
}

/** The step line by line, in the order of work. */
export function stepLines(project: Project, list: HandList, { kind, carries }: HandStep): Phrase[] {
  const lines = carries.map((carry) => carryLine(project, list, carry));
  // In a round the last block makes room for the first.
  const aside = carries.at(-1)!;
  return kind === 'round'
    ? [phrase('Lay block {block} aside.', { block: numberOf(project, aside.block) }), ...lines]
    : lines;
}

function carryLine(project: Project, list: HandList, carry: Carry): Phrase {
  const block = numberOf(project, carry.block);
  const [from, to] = [carry.from, carry.to].map((spot) => spotWords(project, list, spot));
  const turned = turnedBy(project, carry);
  if (carry.from === carry.to)
    return phrase('Block {block}, {place}: turn it {turn}.', { block, place: from!, turn: turned! });
  return turned
    ? phrase('Block {block}: from {from} to {to}; turn it {turn}.', {
        block,
        from: from!,
        to: to!,
        turn: turned,
      })
    : phrase('Block {block}: from {from} to {to}, as it hangs.', { block, from: from!, to: to! });
}

/** Where a block hangs or lies. */
function spotWords(project: Project, { from }: HandList, spot: Spot): Phrase {
  if (spot === 'side table') return phrase('the side table');
  return cellPlace(spot, { wall: from, setting: project.setting });
}

/** How far a block is turned on its way; null: not at all. On the side table a block lies as it hung. */
function turnedBy({ wedge }: Project, { turn, turned, to }: Carry): Phrase | null {
  if (to === 'side table') return null;
  const turns = turnsOf(wedge.perBlock);
  const by = (((turned - turn) % turns) + turns) % turns;
  if (by === 0) return null;
  if (2 * by === turns) return phrase('half round');
  return phrase(by === 1 ? 'a quarter clockwise' : 'a quarter counterclockwise');
}

function numberOf(project: Project, block: BlockId): number {
  return findBlock(project, block)?.number ?? 0;
}
