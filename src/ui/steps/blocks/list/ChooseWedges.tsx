// The choice of wedges by the tool: its number, starting over, and what was proved. To fill empty blocks stands in the foot of the step.
import { Sparkle } from 'lucide-react';
import { openBlocks } from '../../../../editing/commands/chooseWedges';
import { counted, type Phrase } from '../../../../model/phrase';
import { useApp } from '../../../app';
import { Complaint } from '../../../fields/Complaint';
import { DrawField } from '../../../fields/DrawField';
import { useSay } from '../../../words';
import type { useChoosing } from '../useChoosing';

const MOST_SEED = 9_999;

export function ChooseWedges({ choosing }: { choosing: ReturnType<typeof useChoosing> }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { busy, choose, seed, setSeed, words, problems } = choosing;
  const open = openBlocks(project);
  const kept = project.blocks.length - open.length;
  if (project.blocks.length === 0) return <Complaint problems={problems} />;
  return (
    <section aria-labelledby="choose-title">
      <h3 id="choose-title">{say('Choose wedges')}</h3>
      <div className="stack">
        <p>
          {say(
            'Picks {count} for each block so that no fabric meets itself on a rim, wherever that is possible.',
            { count: project.wedge.perBlock },
          )}
        </p>
        <div className="row">
          <button
            type="button"
            className="button"
            aria-disabled={busy}
            disabled={open.length === 0 && !busy}
            onClick={() => choose(open)}
          >
            {say('Start over')}
          </button>
          <span className="quiet grow">
            {say('Chooses all wedges again, except in sewn and pinned blocks.')}
          </span>
        </div>
        <DrawField
          value={seed}
          most={MOST_SEED}
          same="The same number chooses the same wedges."
          onChange={setSeed}
        />
        {kept > 0 ? (
          <p className="quiet">
            {say(
              counted(
                kept,
                'One block is sewn or pinned and stays as it is.',
                '{count} blocks are sewn or pinned and stay as they are.',
              ),
            )}
          </p>
        ) : null}
      </div>
      <Proof words={words} />
      <Complaint problems={problems} />
    </section>
  );
}

/** The result of the last choice. */
export function Proof({ words }: { words: readonly Phrase[] }) {
  const say = useSay();
  return (
    <div role="status">
      {words.length > 0 ? (
        <div className="proof">
          <Sparkle size={16} aria-hidden />
          <div>
            {words.map((one) => (
              <p key={one.say}>{say(one)}</p>
            ))}
          </div>
        </div>
      ) : null}
    </div>
  );
}
