// The state machine of hands and keys over things that can be carried: on the wall, on its side table, in the workshop. Pure. The
// surface's rules decide what is pressed, which gesture that begins and in what it ends. A gesture is a small record, never in
// the history; it ends in one outcome or none.

/** Screen pixels that a hand must move before a press becomes a gesture. */
export const SLIP = 6;

/** A point of the window, screen pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A pointer that is down. */
export interface Hand {
  readonly id: number;
  /** Where it came down, or where it was when a second hand joined. */
  readonly start: Spot;
  readonly at: Spot;
  /** Whether it is a finger, which may want to scroll. */
  readonly touch: boolean;
}

/** The state: at rest nothing is down or carried; pressed, the hand may begin a gesture yet; else a gesture is under way. */
export type Handling<What, Gesture> =
  | { readonly phase: 'rest' }
  | { readonly phase: 'pressed'; readonly what: What; readonly hand: Hand }
  | {
      readonly phase: 'busy';
      readonly gesture: Gesture;
      /** The thing that the one hand took hold of; null with two hands and by keys. */
      readonly what: What | null;
      /** One or two hands; none by keys. */
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
  /** The pointer is lost: the browser took it away, or its lift happened outside the window. */
  | { readonly kind: 'lost'; readonly id: number }
  /** Escape. */
  | { readonly kind: 'cancel' }
  /** Keys take something up or carry it on; keys or hands, the last one to take hold has it. */
  | { readonly kind: 'key'; readonly gesture: Gesture }
  /** Keys put down what is carried. */
  | { readonly kind: 'put' };

/** The rules of a surface for its hands, at the moment of an event. */
export interface Rules<What, Gesture, Outcome> {
  /** Whether a finger scrolls unless it has rested first. */
  readonly restsFirst: boolean;
  /** The gesture that a press becomes; where it may not, the outcome of the refusal, null for none. */
  readonly begin: (
    what: What,
    hand: Hand,
  ) => { readonly gesture: Gesture } | { readonly refused: Outcome | null };
  /** The gesture of two hands; null where a second hand has no meaning. */
  readonly join: ((hands: readonly [Hand, Hand]) => Gesture) | null;
  /** The gesture after a hand has moved; the same object if nothing changed. */
  readonly follow: (gesture: Gesture, what: What | null, hands: readonly Hand[]) => Gesture;
  /** The outcome of a press without a gesture. */
  readonly tap: (what: What) => Outcome | null;
  readonly end: (gesture: Gesture) => Outcome | null;
}

export interface Step<What, Gesture, Outcome> {
  readonly state: Handling<What, Gesture>;
  readonly outcome: Outcome | null;
}

export const REST = { phase: 'rest' } as const;

/** The state after an event, and its outcome. The same state object if the event has no meaning in this state. */
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
  // A pointer that comes down twice was lifted outside the window.
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

/** The step for a finger that has rested. If it may not carry the thing, it stays a press, which can still be a tap. */
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
