// The place of a new set, after the others: a strip put down here begins one, and one is added by hand, as long as the left-overs.
import { Plus } from 'lucide-react';
import { useState } from 'react';
import { type LeftOver, lengthsLeft } from '../../../cutting/sets/leftOvers';
import { addSet } from '../../../editing/commands/stripSets';
import { counted } from '../../../model/phrase';
import type { WedgePlan } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';

/** Lengths that are offered at most. */
const MOST_LENGTHS = 4;

export function NewSet({
  left,
  wedge,
  over,
}: {
  left: readonly LeftOver[];
  wedge: WedgePlan;
  over: boolean;
}) {
  const say = useSay();
  const store = useAppStore();
  const [run, problems] = useRun();
  const [wanted, setWanted] = useState<Inches | null>(null);
  const lengths = lengthsLeft(left, wedge.seam).slice(0, MOST_LENGTHS);
  const chosen = lengths.find(({ length }) => length === wanted) ?? lengths[0];
  const add = () => {
    if (!run(addSet([], chosen?.length))) return;
    store.getState().lay({ set: store.getState().project.stripSets.at(-1)?.id ?? null });
  };
  return (
    <li className={over ? 'lay-new over' : 'lay-new'} data-lay-new>
      <p>{say('Put a strip here to start a set, or')}</p>
      <button data-once type="button" className="button" onClick={add}>
        <Plus size={16} aria-hidden /> {say('Add a set by hand')}
      </button>
      {lengths.length > 1 ? (
        <Choice
          label="As long as the left-overs"
          value={String(chosen!.length)}
          options={lengths.map(({ length }) => ({
            value: String(length),
            label: say('{length}', { length: { inches: length } }),
          }))}
          onChange={(text) => setWanted(Number(text))}
        />
      ) : null}
      {chosen ? (
        <p className="lay-hint">
          <Fractions
            text={say(
              counted(
                chosen.count,
                '1 left-over is {length} long: {height} high.',
                '{count} left-overs are {length} long: {height} high together.',
                { length: { inches: chosen.length }, height: { inches: chosen.height } },
              ),
            )}
          />
        </p>
      ) : null}
      <Complaint problems={problems} />
    </li>
  );
}
