// The machine of hands over the simplest rules there are: every state and event, then any order of events.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Hand,
  type HandEvent,
  type Handling,
  handsOf,
  REST,
  type Rules,
  SLIP,
  type Step,
  step,
} from '../../../../src/ui/wall/hands/hands';

type What = 'loose' | 'sewn' | 'nothing';
type Gesture = { readonly holds: What | 'both' | 'key'; readonly seen: number };
type Outcome = `${'tapped' | 'put down'} ${string}` | 'it is sewn';
type State = Handling<What, Gesture>;
type Event = HandEvent<What, Gesture>;

/** What was refused or carried is told by its name; `seen` counts how often a gesture was followed. */
function made(restsFirst = false, joins = true): Rules<What, Gesture, Outcome> {
  return {
    restsFirst,
    begin: (what) => {
      if (what === 'loose') return { gesture: { holds: what, seen: 0 } };
      return { refused: what === 'sewn' ? 'it is sewn' : null };
    },
    join: joins ? () => ({ holds: 'both', seen: 0 }) : null,
    follow: (gesture) => ({ ...gesture, seen: gesture.seen + 1 }),
    tap: (what) => (what === 'nothing' ? null : `tapped ${what}`),
    end: ({ holds }) => (holds === 'both' ? null : `put down ${holds}`),
  };
}

const HERE = { x: 100, y: 100 };
const NEAR = { x: 100 + SLIP - 1, y: 100 };
const FAR = { x: 100, y: 100 + SLIP };

function hand(id: number, at = HERE, touch = false): Hand {
  return { id, start: HERE, at, touch };
}
function pressed(what: What, touch = false): State {
  return { phase: 'pressed', what, hand: hand(1, HERE, touch) };
}
function busy(holds: Gesture['holds'], what: What | null, hands: readonly Hand[], seen = 0): State {
  return { phase: 'busy', gesture: { holds, seen }, what, hands };
}
function press(id: number, what: What, at = HERE, touch = false): Event {
  return { kind: 'press', id, at, touch, what };
}
const move = (id: number, at: typeof HERE): Event => ({ kind: 'move', id, at });
const lift = (id: number, at = HERE): Event => ({ kind: 'lift', id, at });
const rested = (id: number): Event => ({ kind: 'rested', id });
const lost = (id: number): Event => ({ kind: 'lost', id });
const CANCEL: Event = { kind: 'cancel' };
const PUT: Event = { kind: 'put' };
const BY_KEY: Event = { kind: 'key', gesture: { holds: 'key', seen: 0 } };

const carrying = busy('loose', 'loose', [hand(1, FAR)]);
const both = busy('both', null, [hand(1), hand(2)]);
const leftOver = busy('both', null, [hand(2)]);
const keyed = busy('key', null, []);

type Row = readonly [name: string, from: State, event: Event, to: State, outcome: Outcome | null];

const ROWS: readonly Row[] = [
  ['at rest a press waits for what it becomes', REST, press(1, 'loose'), pressed('loose'), null],
  ['at rest nothing else means anything: move', REST, move(1, FAR), REST, null],
  ['at rest nothing else means anything: rested', REST, rested(1), REST, null],
  ['at rest nothing else means anything: lift', REST, lift(1), REST, null],
  ['at rest nothing else means anything: lost', REST, lost(1), REST, null],
  ['at rest nothing else means anything: Escape', REST, CANCEL, REST, null],
  ['at rest nothing else means anything: put', REST, PUT, REST, null],
  ['at rest keys take something up', REST, BY_KEY, keyed, null],

  [
    'a press that hardly moves stays a press',
    pressed('loose'),
    move(1, NEAR),
    { phase: 'pressed', what: 'loose', hand: hand(1, NEAR) },
    null,
  ],
  ['a press that moves carries', pressed('loose'), move(1, FAR), carrying, null],
  ['a press on what is locked says so once it moves, and is over', pressed('sewn'), move(1, FAR), REST, 'it is sewn'],
  ['a press on what is not there is over once it moves', pressed('nothing'), move(1, FAR), REST, null],
  ['a press that is lifted is a tap', pressed('loose'), lift(1), REST, 'tapped loose'],
  ['a press that is lifted elsewhere without a move is a tap', pressed('loose'), lift(1, FAR), REST, 'tapped loose'],
  ['a press joined by a second hand becomes the gesture of both', pressed('loose'), press(2, 'sewn'), both, null],
  ['a pointer that comes down twice was let go of unheard', pressed('loose'), press(1, 'sewn'), pressed('sewn'), null],
  ['Escape ends a press without a tap', pressed('loose'), CANCEL, REST, null],
  ['a press that is lost is no tap', pressed('loose'), lost(1), REST, null],
  ['another pointer’s move means nothing', pressed('loose'), move(2, FAR), pressed('loose'), null],
  ['another pointer’s lift means nothing', pressed('loose'), lift(2), pressed('loose'), null],
  ['another pointer’s loss means nothing', pressed('loose'), lost(2), pressed('loose'), null],
  ['nothing is put down while nothing is carried', pressed('loose'), PUT, pressed('loose'), null],
  ['keys take it from a press', pressed('loose'), BY_KEY, keyed, null],

  ['a carrying hand is followed', carrying, move(1, HERE), busy('loose', 'loose', [hand(1)], 1), null],
  ['a carrying hand puts down where it is lifted', carrying, lift(1), REST, 'put down loose'],
  ['Escape puts nothing down', carrying, CANCEL, REST, null],
  ['what is lost is not put down', carrying, lost(1), REST, null],
  ['resting means nothing to a hand that carries', carrying, rested(1), carrying, null],
  [
    'a second hand makes it the gesture of both, from where they are',
    carrying,
    press(2, 'sewn'),
    busy('both', null, [{ ...hand(1, FAR), start: FAR }, hand(2)]),
    null,
  ],
  ['keys put down what a hand carries', carrying, PUT, REST, 'put down loose'],
  ['keys take it from a hand', carrying, BY_KEY, keyed, null],

  ['either of two hands is followed', both, move(2, FAR), busy('both', null, [hand(1), hand(2, FAR)], 1), null],
  ['a third hand means nothing', both, press(3, 'loose'), both, null],
  ['the first of two hands to lift ends nothing', both, lift(1), leftOver, null],
  ['one of two hands lost ends it for both', both, lost(1), REST, null],
  ['Escape ends it for both', both, CANCEL, REST, null],
  ['the hand that is left over holds nothing of its own', leftOver, move(2, FAR), busy('both', null, [hand(2, FAR)], 1), null],
  ['the last of two hands to lift ends their gesture', leftOver, lift(2), REST, null],
  ['the hand that is left over can be joined again', leftOver, press(3, 'loose'), busy('both', null, [hand(2), hand(3)]), null],

  ['keys carry on what keys took up', keyed, BY_KEY, keyed, null],
  ['keys put down what keys took up', keyed, PUT, REST, 'put down key'],
  ['Escape leaves what keys took up', keyed, CANCEL, REST, null],
  ['a press takes it from the keys', keyed, press(1, 'loose'), pressed('loose'), null],
  ['a pointer that is not down means nothing to keys', keyed, move(1, FAR), keyed, null],
]; // biome-ignore format: a table

describe('hands that carry at once', () => {
  it.each(ROWS)('%s', (_, from, event, to, outcome) => {
    expect(step(from, event, made())).toEqual({ state: to, outcome });
  });
  it('go on with the same state where an event means nothing', () => {
    for (const [, from, event, to] of ROWS) {
      if (event.kind === 'key' || JSON.stringify(from) !== JSON.stringify(to)) continue;
      expect(step(from, event, made()).state).toBe(from);
    }
  });
});

const finger = (at = HERE) => hand(1, at, true);
const RESTING: readonly Row[] = [
  ['a finger that moves at once scrolls', pressed('loose', true), move(1, FAR), REST, null],
  [
    'a finger that hardly moves may still rest',
    pressed('loose', true),
    move(1, NEAR),
    { phase: 'pressed', what: 'loose', hand: finger(NEAR) },
    null,
  ],
  ['a finger that has rested carries', pressed('loose', true), rested(1), busy('loose', 'loose', [finger()]), null],
  ['a finger rests on what is locked without a word, and may tap', pressed('sewn', true), rested(1), pressed('sewn', true), null],
  ['resting is of the finger that is down', pressed('loose', true), rested(2), pressed('loose', true), null],
  ['a finger lifted before it has rested taps', pressed('loose', true), lift(1), REST, 'tapped loose'],
  ['a finger that carries is followed', busy('loose', 'loose', [finger()]), move(1, FAR), busy('loose', 'loose', [finger(FAR)], 1), null],
  ['a mouse carries at once here too', pressed('loose'), move(1, FAR), carrying, null],
  ['a second hand means nothing', pressed('loose', true), press(2, 'loose'), pressed('loose', true), null],
  ['a second hand means nothing to one that carries', carrying, press(2, 'loose'), carrying, null],
]; // biome-ignore format: a table

describe('hands where a finger rests before it carries, and a second one does not join', () => {
  it.each(RESTING)('%s', (_, from, event, to, outcome) => {
    expect(step(from, event, made(true, false))).toEqual({ state: to, outcome });
  });
});

const id = fc.integer({ min: 1, max: 4 });
const at = fc.record({ x: fc.integer({ min: 90, max: 110 }), y: fc.integer({ min: 90, max: 110 }) });
const what = fc.constantFrom<What>('loose', 'sewn', 'nothing');
const anyEvent: fc.Arbitrary<Event> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('press'), id, at, touch: fc.boolean(), what }) },
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('move'), id, at }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('lift'), id, at }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('rested'), id }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('lost'), id }) },
  { weight: 1, arbitrary: fc.constantFrom<Event>(CANCEL, PUT, BY_KEY) },
) as fc.Arbitrary<Event>;

describe('any order of events', () => {
  const runs = { numRuns: 2000, verbose: 1 as const };

  it('comes to rest once every hand is lifted and the keys have put down or left', () => {
    fc.assert(
      fc.property(fc.array(anyEvent), fc.boolean(), fc.boolean(), (events, rests, joins) => {
        const rules = made(rests, joins);
        let state: State = REST;
        for (const event of events) state = step(state, event, rules).state;
        for (const { id } of handsOf(state)) state = step(state, lift(id), rules).state;
        expect(handsOf(state)).toEqual([]);
        if (state.phase !== 'rest') expect(state).toMatchObject({ phase: 'busy', what: null, hands: [] });
        for (const last of [PUT, CANCEL]) expect(step(state, last, rules).state).toEqual(REST);
      }),
      runs,
    );
  });

  it('ends each gesture in one outcome at most, and then it is over', () => {
    fc.assert(
      fc.property(fc.array(anyEvent), fc.boolean(), fc.boolean(), (events, rests, joins) => {
        let state: State = REST;
        let outcomes = 0;
        for (const event of events) {
          const next: Step<What, Gesture, Outcome> = step(state, event, made(rests, joins));
          if (state.phase === 'rest') outcomes = 0;
          if (next.outcome !== null) {
            outcomes += 1;
            expect(state.phase).not.toBe('rest');
            expect(next.state.phase).toBe('rest');
          }
          expect(outcomes).toBeLessThanOrEqual(1);
          state = next.state;
        }
      }),
      runs,
    );
  });

  it('is given up by Escape, and by the loss of a hand that is down, with no outcome then or later', () => {
    fc.assert(
      fc.property(
        fc.array(anyEvent),
        fc.boolean(),
        fc.boolean(),
        fc.boolean(),
        (events, rests, joins, byLoss) => {
          const rules = made(rests, joins);
          let state: State = REST;
          for (const event of events) state = step(state, event, rules).state;
          const down = handsOf(state);
          const ending = byLoss && down[0] ? lost(down.at(-1)!.id) : CANCEL;
          expect(step(state, ending, rules)).toEqual({ state: REST, outcome: null });
          for (const { id } of down)
            for (const event of [move(id, FAR), rested(id), lift(id, FAR)])
              expect(step(REST, event, rules)).toEqual({ state: REST, outcome: null });
        },
      ),
      runs,
    );
  });

  it('holds two hands at most, each once, and a press of one', () => {
    fc.assert(
      fc.property(fc.array(anyEvent), fc.boolean(), fc.boolean(), (events, rests, joins) => {
        let state: State = REST;
        for (const event of events) {
          state = step(state, event, made(rests, joins)).state;
          const ids = handsOf(state).map((hand) => hand.id);
          expect(new Set(ids).size).toBe(ids.length);
          expect(ids.length).toBeLessThanOrEqual(joins ? 2 : 1);
          if (state.phase === 'busy' && state.what !== null) expect(ids.length).toBe(1);
        }
      }),
      runs,
    );
  });
});
