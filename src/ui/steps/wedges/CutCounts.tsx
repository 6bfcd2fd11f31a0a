// Counts of a set's wedges by tip: cut, used, left. A wedge that is lost or found is counted here, with its effect on the blocks.
import { Minus, Plus } from 'lucide-react';
import { useEffect, useState } from 'react';
import type { LedgerRow } from '../../../cutting/wedges/ledger';
import type { Command } from '../../../editing/apply';
import { changeSet } from '../../../editing/commands/stripSets';
import { gaining, losing, type Recount } from '../../../editing/commands/wedgeCount';
import type { Tip } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { useApp, useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import { TipSign } from './TipSign';

const TIPS: readonly { tip: Tip; name: string; lose: string; gain: string }[] = [
  { tip: 'up', name: 'Tip up', lose: 'One tip-up wedge of set {set} is lost', gain: 'One tip-up wedge of set {set} more' },
  { tip: 'down', name: 'Tip down', lose: 'One tip-down wedge of set {set} is lost', gain: 'One tip-down wedge of set {set} more' },
]; // biome-ignore format: a table

export function CutCounts({ row }: { row: LedgerRow }) {
  const say = useSay();
  const store = useAppStore();
  const [asked, setAsked] = useState<(Recount & { readonly yes: string }) | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const revision = useApp((app) => app.revision);
  const { set } = row;
  // A proposal is valid only for the project it was made for.
  useEffect(() => {
    if (revision >= 0) setAsked(null);
  }, [revision]);
  const run = (command: Command) => setProblems(store.getState().run(command, 'here'));
  /** Counts at once if no block changes; else shows a preview on the wall and words on the change. */
  const propose = (recount: Recount, yes: string) => {
    if (recount.command.moves.length === 0) return run(recount.command);
    const refused = store.getState().showPreview(recount.command);
    setProblems(refused);
    setAsked(refused.length === 0 ? { ...recount, yes } : null);
  };
  const lose = (tip: Tip) => {
    const { loss, none } = losing(store.getState().project, set.id, tip);
    setAsked(null);
    if (loss) propose(loss, 'It is lost; change the plan');
    else setProblems([{ code: 'no-wedge', path: set.id, message: none }]);
  };
  const gain = (tip: Tip) =>
    propose(gaining(store.getState().project, set.id, tip), 'Count it and use it there');
  const leave = () => {
    setAsked(null);
    store.getState().showPreview(null);
  };
  useEscape(leave, asked !== null);
  return (
    <div className="stack">
      <table className="wdg-counts" aria-label={say('Wedges of set {set}', { set: set.label })}>
        <thead>
          <tr>
            <th scope="col">{say('Wedges')}</th>
            <th scope="col">{say('There')}</th>
            <th scope="col">{say('Used')}</th>
            <th scope="col">{say('Left')}</th>
            <th scope="col">{say('Lost or more')}</th>
          </tr>
        </thead>
        <tbody>
          {TIPS.map(({ tip, name, lose: loseName, gain: gainName }) => (
            <tr key={tip}>
              <th scope="row">
                <TipSign tip={tip} /> {say(name)}
              </th>
              <td>{row.available[tip]}</td>
              <td>{row.used[tip]}</td>
              <td>{row.left[tip]}</td>
              <td>
                <button
                  type="button"
                  className="button bare"
                  aria-label={say(loseName, { set: set.label })}
                  title={say(loseName, { set: set.label })}
                  onClick={() => lose(tip)}
                >
                  <Minus size={15} aria-hidden />
                </button>
                <button
                  type="button"
                  className="button bare"
                  aria-label={say(gainName, { set: set.label })}
                  title={say(gainName, { set: set.label })}
                  onClick={() => gain(tip)}
                >
                  <Plus size={15} aria-hidden />
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Complaint problems={problems} />
      {asked ? (
        <div className="stack wdg-asked" role="status">
          {asked.words.map((words) => (
            <p key={words.say}>{say(words)}</p>
          ))}
          <div className="row">
            <button type="button" className="button solid" onClick={() => run(asked.command)}>
              {say(asked.yes)}
            </button>
            <button data-always type="button" className="button" onClick={leave}>
              {say('Cancel')}
            </button>
          </div>
        </div>
      ) : null}
      {set.cut ? (
        <div className="spread">
          <span className="quiet">{say('Counted by hand.')}</span>
          <button
            type="button"
            className="button"
            onClick={() => run(changeSet(store.getState().project, set.id, { cut: null }))}
          >
            {say('Count as the set gives')}
          </button>
        </div>
      ) : null}
    </div>
  );
}
