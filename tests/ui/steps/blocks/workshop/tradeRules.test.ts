// The rules for hands on places: from a press to the trade of two wedges.
import { describe, expect, it } from 'vitest';
import type { Project } from '../../../../../src/model/project';
import type { Carried, PlaceRef, Spare } from '../../../../../src/ui/steps/blocks/workshop/trade';
import { type TradeOutcome, tradeRules } from '../../../../../src/ui/steps/blocks/workshop/tradeRules';
import {
  type HandEvent,
  type Handling,
  REST,
  type Spot,
  type Step,
  step,
} from '../../../../../src/ui/wall/hands/hands';
import { demo, unsewn } from '../../../../demo';

const QUILT = unsewn(demo('harbour-reading-corner'));
const BLOCK = QUILT.blocks[0]!.id;
const place = (at: number): PlaceRef => ({ block: BLOCK, place: at });
/** Places lie in a row, a hundred pixels each; above the row there is nothing, far below it lie the wedges left over. */
const under = ({ x, y }: Spot) => (y < 0 ? null : y > 500 ? ('tray' as const) : place(Math.floor(x / 100)));
const SPARE: Spare = { spare: { set: 's1', tip: 'up' } };
const TRAY = { x: 50, y: 600 };
const over = (at: number) => ({ x: at * 100 + 50, y: 20 });

type Event = HandEvent<PlaceRef | Spare, Carried>;
const press = (at: number, touch = false): Event => ({
  kind: 'press',
  id: 1,
  at: over(at),
  touch,
  what: place(at),
});
const move = (at: Spot): Event => ({ kind: 'move', id: 1, at });
const lift = (at: Spot): Event => ({ kind: 'lift', id: 1, at });
const RESTED: Event = { kind: 'rested', id: 1 };

function play(events: readonly Event[], project: Project = QUILT) {
  let state: Handling<PlaceRef | Spare, Carried> = REST;
  const outcomes: TradeOutcome[] = [];
  for (const event of events) {
    const next: Step<PlaceRef | Spare, Carried, TradeOutcome> = step(
      state,
      event,
      tradeRules(project, under),
    );
    state = next.state;
    if (next.outcome) outcomes.push(next.outcome);
  }
  return { outcomes, carried: state.phase === 'busy' ? state.gesture : null };
}

function changed(change: (block: Project['blocks'][number]) => Project['blocks'][number]): Project {
  return { ...QUILT, blocks: QUILT.blocks.map((block) => (block.id === BLOCK ? change(block) : block)) };
}

describe('a hand on the places of a block', () => {
  it('carries a wedge by mouse, and says where it is and what lies under it', () => {
    expect(play([press(0), move(over(2))]).carried).toEqual({
      from: place(0),
      over: place(2),
      hand: over(2),
    });
  });
  it('trades a wedge with the place it is put down on', () => {
    const { outcomes, carried } = play([press(0), move(over(1)), move(over(2)), lift(over(2))]);
    expect(outcomes).toEqual([{ kind: 'putDown', from: place(0), to: place(2) }]);
    expect(carried).toBe(null);
  });
  it('leaves a wedge that is let go where no place is', () => {
    expect(play([press(0), move(over(2)), lift({ x: 50, y: -9 })]).outcomes).toEqual([]);
  });
  it('carries by finger after a rest, and scrolls without one', () => {
    const way = [move(over(2)), lift(over(2))];
    expect(play([press(0, true), RESTED, ...way]).outcomes).toHaveLength(1);
    expect(play([press(0, true), ...way]).outcomes).toEqual([]);
    expect(play([press(0, true), move(over(2)), RESTED, ...way]).outcomes).toEqual([]);
  });
  it('leaves a press that carries nothing to the click', () => {
    expect(play([press(0), lift(over(0))]).outcomes).toEqual([]);
    expect(play([press(0, true), lift(over(0))]).outcomes).toEqual([]);
  });
  it('says why the wedges of a sewn block stay, but not to a finger that only rests', () => {
    const sewn = changed((block) => ({ ...block, progress: 'octagon' }));
    const { outcomes } = play([press(0), move(over(2)), lift(over(2))], sewn);
    expect(outcomes).toMatchObject([{ kind: 'refuse', why: { say: expect.stringContaining('is sewn') } }]);
    expect(play([press(0, true), RESTED, lift(over(0))], sewn)).toEqual({ outcomes: [], carried: null });
  });
  it('carries nothing from an empty place', () => {
    const empty = changed((block) => ({ ...block, places: block.places.with(0, null) }));
    expect(play([press(0), move(over(2)), lift(over(2))], empty).outcomes).toEqual([]);
  });
  it('puts a wedge that was left over down on a place, and leaves it where it was on the tray or beside it', () => {
    const take: Event = { kind: 'press', id: 1, at: TRAY, touch: false, what: SPARE };
    expect(play([take, move(over(2)), lift(over(2))]).outcomes).toEqual([
      { kind: 'putDown', from: SPARE, to: place(2) },
    ]);
    const away = { x: 250, y: 600 };
    expect(play([take, move(over(2)), move(away), lift(away)]).outcomes).toEqual([]);
    expect(play([take, move(over(2)), lift({ x: 50, y: -9 })]).outcomes).toEqual([]);
  });
  it('takes a wedge out of its place that is put with those left over', () => {
    expect(play([press(1), move(over(2)), move(TRAY), lift(TRAY)]).outcomes).toEqual([
      { kind: 'takeOut', from: place(1) },
    ]);
  });
  it('leaves the wedge at Escape, and when the browser takes the pointer', () => {
    for (const stop of [{ kind: 'cancel' }, { kind: 'lost', id: 1 }] as const)
      expect(play([press(0), move(over(2)), stop, move(over(2)), lift(over(2))]).outcomes).toEqual([]);
  });
});
