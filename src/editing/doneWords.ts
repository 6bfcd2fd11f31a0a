// What a change is called once it is made: 'turn block 4' becomes 'Turned block 4'.
import { type Phrase, phrase } from '../model/phrase';

/** Past tense of the verbs with which labels of commands begin. */
const PAST: Readonly<Record<string, string>> = {
  add: 'Added',
  begin: 'Began',
  change: 'Changed',
  choose: 'Chose',
  count: 'Counted',
  cut: 'Cut',
  empty: 'Emptied',
  enter: 'Entered',
  fill: 'Filled',
  hang: 'Hung',
  lay: 'Laid',
  leave: 'Left',
  make: 'Made',
  mend: 'Mended',
  move: 'Moved',
  piece: 'Pieced',
  pin: 'Pinned',
  put: 'Put',
  remove: 'Removed',
  rename: 'Renamed',
  replace: 'Replaced',
  set: 'Set',
  shuffle: 'Shuffled',
  split: 'Split',
  swap: 'Swapped',
  take: 'Took',
  trade: 'Traded',
  tie: 'Tied',
  turn: 'Turned',
  unpin: 'Unpinned',
  update: 'Updated',
  use: 'Used',
  write: 'Wrote',
};

/** The label of a command in the past tense; one of several acts gives a sentence for each. An unknown verb gets 'Done'. */
export function doneWords(label: Phrase): Phrase {
  const [verb = ''] = label.say.split(' ', 1);
  const past = PAST[verb.toLowerCase()];
  if (past) return phrase(past + label.say.slice(verb.length), label.with);
  const acts = Object.entries(label.with ?? {});
  if (/^[{}\w., ]*$/.test(label.say) && label.say.startsWith('{') && acts.every(([, act]) => isPhrase(act)))
    return phrase(
      label.say.replaceAll('},', '}.'),
      Object.fromEntries(acts.map(([name, act]) => [name, doneWords(act as Phrase)])),
    );
  return phrase('Done: {change}', { change: label });
}

function isPhrase(value: unknown): value is Phrase {
  return typeof value === 'object' && value !== null && 'say' in value;
}
