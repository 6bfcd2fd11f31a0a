// The machine of hands and keys over things that can be carried: the wall, its side table, the places of the workshop. Pure:
// what is pressed, what a gesture is and what it ends in belong to the surface's rules, which bring its hit-test along.
// A gesture is a small record, never in the history; it ends in one outcome or none.

/** Screen pixels a hand moves before a press becomes a gesture. */
export const SLIP = 6;

/** In the window, screen pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A pointer that is down. */
export interface Hand {
  readonly id: number;
  /** Where it came down, or was when another joined it. */
  readonly start: Spot;
  readonly at: Spot;
  /** A finger, which may want to scroll. */
  readonly touch: boolean;
}

/** At rest nothing is down and nothing carried; pressed, it is not known yet whether it becomes a gesture. */
export type Handling<What, Gesture> =
  | { readonly phase: 'rest' }
  | { readonly phase: 'pressed'; readonly what: What; readonly hand: Hand }
  | {
      readonly phase: 'busy';
      readonly gesture: Gesture;
      /** What the one hand holds; null once another has joined it, and by keys. */
      readonly what: What | null;
      /** One or two; none by keys. */
      readonly hands: readonly Hand[];
    };

export type HandEvent<What, Gesture> =
  | {
      readonly kind: 'press';
      readonly id: number;
      readonly at: Spot;
      readonly touch: boolean;
      readonly what: What;
    }
  | { readonly kind: 'move'; readonly id: number; readonly at: Spot }
  /** The hand has stayed where it came down for a moment. */
  | { readonly kind: 'rested'; readonly id: number }
  | { readonly kind: 'lift'; readonly id: number; readonly at: Spot }
  /** The pointer was taken away: by the browser, or its lift was never heard of. */
  | { readonly kind: 'lost'; readonly id: number }
  /** Escape. */
  | { readonly kind: 'cancel' }
  /** Keys take something up or carry it on; whoever took hold last has it. */
  | { readonly kind: 'key'; readonly gesture: Gesture }
  /** Keys put down what is carried. */
  | { readonly kind: 'put' };

/** What a surface makes of its hands, as it is at the moment of an event. */
export interface Rules<What, Gesture, Outcome> {
  /** A finger that moves before it has rested scrolls; once it has, it carries. */
  readonly restsFirst: boolean;
  /** The gesture a press becomes; where it may not, what is said about that, or null for nothing. */
  readonly begin: (
    what: What,
    hand: Hand,
  ) => { readonly gesture: Gesture } | { readonly refused: Outcome | null };
  /** The gesture of two hands; null where a second hand means nothing. */
  readonly join: ((hands: readonly [Hand, Hand]) => Gesture) | null;
  /** The gesture after a hand moved; the same object where nothing changed. */
  readonly follow: (gesture: Gesture, what: What | null, hands: readonly Hand[]) => Gesture;
  /** What a press without a gesture ends in. */
  readonly tap: (what: What) => Outcome | null;
  readonly end: (gesture: Gesture) => Outcome | null;
}

export interface Step<What, Gesture, Outcome> {
  readonly state: Handling<What, Gesture>;
  readonly outcome: Outcome | null;
}

export const REST = { phase: 'rest' } as const;

/** The state after an event and what came of it. The same state object where the event means nothing in it. */
export function step<What, Gesture, Outcome>(
  state: Handling<What, Gesture>,
  event: HandEvent<What, Gesture>,
  rules: Rules<What, Gesture, Outcome>,
): Step<What, Gesture, Outcome> {
  switch (event.kind) {
    case 'press':
      return { state: press(state, event, rules), outcome: null };
    case 'move':
      return isDown(state, event.id) ? move(handMoved(state, event), rules) : stays(state);
    case 'rested':
      return rested(state, event.id, rules);
    case 'lift':
      return isDown(state, event.id) ? lift(handMoved(state, event), event.id, rules) : stays(state);
    case 'lost':
      return isDown(state, event.id) ? ends(null) : stays(state);
    case 'cancel':
      return state.phase === 'rest' ? stays(state) : ends(null);
    case 'key':
      return stays<What, Gesture>({ phase: 'busy', gesture: event.gesture, what: null, hands: [] });
    case 'put':
      return state.phase === 'busy' ? ends(rules.end(state.gesture)) : stays(state);
  }
}

/** The hands that are down, in the order they came. */
export function handsOf<What, Gesture>(state: Handling<What, Gesture>): readonly Hand[] {
  if (state.phase === 'pressed') return [state.hand];
  return state.phase === 'busy' ? state.hands : [];
}

function press<What, Gesture, Outcome>(
  state: Handling<What, Gesture>,
  { id, at, touch, what }: Extract<HandEvent<What, Gesture>, { kind: 'press' }>,
  rules: Rules<What, Gesture, Outcome>,
): Handling<What, Gesture> {
  const hand = { id, start: at, at, touch };
  const [other, second] = handsOf(state);
  // A pointer cannot come down twice: its lift was not heard of.
  if (!other || isDown(state, id)) return { phase: 'pressed', what, hand };
  if (!rules.join || second) return state;
  const hands = [{ ...other, start: other.at }, hand] as const;
  return { phase: 'busy', gesture: rules.join(hands), what: null, hands };
}

function move<What, Gesture, Outcome>(
  state: Handling<What, Gesture>,
  rules: Rules<What, Gesture, Outcome>,
): Step<What, Gesture, Outcome> {
  if (state.phase === 'busy')
    return stays({ ...state, gesture: rules.follow(state.gesture, state.what, state.hands) });
  if (state.phase !== 'pressed' || distance(state.hand) < SLIP) return stays(state);
  if (rules.restsFirst && state.hand.touch) return ends(null);
  const begun = rules.begin(state.what, state.hand);
  if ('refused' in begun) return ends(begun.refused);
  return stays({ phase: 'busy', gesture: begun.gesture, what: state.what, hands: [state.hand] });
}

/** A finger that may not carry what it rests on goes on as a press, which is still a tap. */
function rested<What, Gesture, Outcome>(
  state: Handling<What, Gesture>,
  id: number,
  rules: Rules<What, Gesture, Outcome>,
): Step<What, Gesture, Outcome> {
  if (state.phase !== 'pressed' || state.hand.id !== id) return stays(state);
  const begun = rules.begin(state.what, state.hand);
  if ('refused' in begun) return stays(state);
  return stays({ phase: 'busy', gesture: begun.gesture, what: state.what, hands: [state.hand] });
}

function lift<What, Gesture, Outcome>(
  state: Handling<What, Gesture>,
  id: number,
  rules: Rules<What, Gesture, Outcome>,
): Step<What, Gesture, Outcome> {
  if (state.phase === 'pressed') return ends(rules.tap(state.what));
  if (state.phase === 'rest') return stays(state);
  const left = state.hands.filter((hand) => hand.id !== id);
  if (left.length > 0) return stays({ ...state, hands: left });
  return ends(rules.end(rules.follow(state.gesture, state.what, state.hands)));
}

function stays<What, Gesture>(state: Handling<What, Gesture>) {
  return { state, outcome: null };
}

function ends<Outcome>(outcome: Outcome | null) {
  return { state: REST, outcome };
}

function isDown<What, Gesture>(state: Handling<What, Gesture>, id: number): boolean {
  return handsOf(state).some((hand) => hand.id === id);
}

function handMoved<What, Gesture>(
  state: Handling<What, Gesture>,
  { id, at }: { readonly id: number; readonly at: Spot },
): Handling<What, Gesture> {
  if (state.phase === 'pressed') return { ...state, hand: { ...state.hand, at } };
  if (state.phase === 'rest') return state;
  return { ...state, hands: state.hands.map((hand) => (hand.id === id ? { ...hand, at } : hand)) };
}

function distance({ start, at }: Hand): number {
  return Math.hypot(at.x - start.x, at.y - start.y);
}
