// The strips that no set takes, with the rule that leaves them: after sets are made, and in the answer of the largest top.
import type { StripsLeft } from '../../cutting/sets/whyLeft';
import { Fractions } from '../fields/Fractions';
import { useSay } from '../words';

/** Items of a list; nothing where no strip is left. */
export function StripsLeftItems({ left }: { left: readonly StripsLeft[] }) {
  const say = useSay();
  return left.map(({ words }) => (
    <li key={say(words)} className="quiet">
      <Fractions text={say(words)} />
    </li>
  ));
}
