// Ways to mend a finding. Ticking one shows it on the wall; ticking several shows them together; nothing is done before
// it is accepted.
import { useEffect, useState } from 'react';
import type { Effect, Proposal } from '../../../arrange/mend/proposals';
import { canGoTogether } from '../../../arrange/mend/togetherWith';
import type { Finding } from '../../../balance/finding';
import { rearrange } from '../../../editing/commands/wall';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Balance } from '../../../store/analysis/analysis';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { useSession } from '../../session';
import { useSay } from '../../words';
import { MendEffect } from './MendEffect';

export function Mends({ balance, finding }: { balance: Balance; finding: Finding }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { analysing } = useSession();
  const [proposals, setProposals] = useState<readonly Proposal[] | null>(null);
  const [ticked, setTicked] = useState<readonly Proposal[]>([]);
  const [run, problems] = useRun();
  useEffect(() => {
    setTicked([]);
    setProposals(null);
    let wanted = true;
    void analysing.proposals(balance.project, finding.id).then((found) => {
      if (wanted) setProposals(found ?? []);
    });
    return () => {
      wanted = false;
    };
  }, [analysing, balance, finding]);
  useEffect(() => () => store.getState().showPreview(null), [store]);
  const together = useEffectOf(balance, ticked);
  const tick = (proposal: Proposal) => {
    const next = ticked.includes(proposal) ? ticked.filter((one) => one !== proposal) : [...ticked, proposal];
    setTicked(next);
    const moves = next.flatMap((one) => one.moves);
    store.getState().showPreview(moves.length > 0 ? { moves, label: labelOf(next) } : null);
  };
  if (proposals === null) return <p className="mends quiet">{say('Looking for ways to mend it …')}</p>;
  if (proposals.length === 0) {
    return (
      <p className="mends quiet">
        {say(
          project.wall.cells.some((cell) => cell?.pinned)
            ? 'Nothing that is free to move mends this. Take out a pin, or live with it.'
            : 'No single move of what is free mends this. A shuffle may; else live with it.',
        )}
      </p>
    );
  }
  return (
    <div className="mends">
      {proposals.map((proposal) => {
        const words = say(proposal.words);
        const clash = ticked.some((one) => one !== proposal && !canGoTogether(project, one, proposal));
        return (
          <div key={words} className="mend">
            <label className="check">
              <input
                type="checkbox"
                checked={ticked.includes(proposal)}
                disabled={clash}
                onChange={() => tick(proposal)}
              />
              <span>{words}</span>
            </label>
            {clash ? (
              <p className="effect">{say('It touches the same blocks; take one or the other.')}</p>
            ) : (
              <MendEffect effect={proposal.effect} />
            )}
          </div>
        );
      })}
      {together && ticked.length > 1 ? (
        <div className="mend">
          <strong>
            {say(ticked.length === 2 ? 'Both together' : 'All {count} together', { count: ticked.length })}
          </strong>
          <MendEffect effect={together} />
        </div>
      ) : null}
      {together ? (
        <div className="row" style={{ marginTop: 10 }}>
          <button
            type="button"
            className="button solid"
            onClick={() => {
              const moves = ticked.flatMap((one) => one.moves);
              if (run(rearrange(moves, labelOf(ticked)))) store.getState().showFinding(null);
            }}
          >
            {say(ticked.length === 1 ? 'Do it' : ticked.length === 2 ? 'Do both' : 'Do all {count}', {
              count: ticked.length,
            })}
          </button>
        </div>
      ) : null}
      <Complaint problems={problems} />
    </div>
  );
}

/** What the ticked mends do together; null while that is worked out. */
function useEffectOf(balance: Balance, ticked: readonly Proposal[]): Effect | null {
  const { analysing } = useSession();
  const [known, setKnown] = useState<{ of: readonly Proposal[]; effect: Effect } | null>(null);
  useEffect(() => {
    if (ticked.length < 2) return;
    let wanted = true;
    const moves = ticked.flatMap((one) => one.moves);
    void analysing.effect(balance.project, moves).then((effect) => {
      if (wanted && effect) setKnown({ of: ticked, effect });
    });
    return () => {
      wanted = false;
    };
  }, [analysing, balance, ticked]);
  if (ticked.length < 2) return ticked[0]?.effect ?? null;
  return known?.of === ticked ? known.effect : null;
}

/** The words for undo. */
function labelOf(proposals: readonly Proposal[]): Phrase {
  const [only] = proposals;
  if (proposals.length === 1 && only) {
    const { say } = only.words;
    return phrase('{change}', { change: { ...only.words, say: say.charAt(0).toLowerCase() + say.slice(1) } });
  }
  return counted(proposals.length, 'mend 1 clash', 'make {count} mends');
}
