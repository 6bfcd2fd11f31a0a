// Ways to mend a finding. The ticked ones are shown together as a preview on the wall; nothing changes until they are accepted.
import { type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import { lastAdvice } from '../../../arrange/mend/advice';
import type { Effect, Proposal } from '../../../arrange/mend/proposals';
import { askedOf } from '../../../arrange/search/effort';
import type { Finding } from '../../../balance/finding';
import { apply, type Rearrangement } from '../../../editing/apply';
import { rearrange } from '../../../editing/commands/wall';
import { canGoTogether } from '../../../model/moves';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import type { Balance } from '../../../store/analysis/analysis';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { useSession } from '../../session';
import { useSay } from '../../words';
import { MendEffect } from './MendEffect';

const NONE: readonly Proposal[] = [];

export function Mends({ balance, finding }: { balance: Balance; finding: Finding }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { analysing } = useSession();
  const [proposals, setProposals] = useState<readonly Proposal[] | null>(null);
  const [chosen, setChosen] = useState({ of: project, ticked: NONE });
  // Ticks are valid only for the project they were made for.
  const ticked = chosen.of === project ? chosen.ticked : NONE;
  const [run, problems] = useRun();
  useEffect(() => {
    setChosen({ of: balance.project, ticked: NONE });
    setProposals(null);
    let wanted = true;
    void analysing.proposals(balance.project, finding.id).then((found) => {
      if (wanted) setProposals(found ?? []);
    });
    return () => {
      wanted = false;
    };
  }, [analysing, balance, finding]);
  useEffect(() => () => void store.getState().showPreview(null), [store]);
  const part = useFoundInSight(proposals !== null);
  const together = useEffectOf(balance, ticked);
  const tick = (proposal: Proposal) => {
    const next = ticked.includes(proposal) ? ticked.filter((one) => one !== proposal) : [...ticked, proposal];
    setChosen({ of: project, ticked: next });
    store.getState().showPreview(next.length > 0 ? mend(next) : null);
  };
  const current = balance.project === project ? proposals : null;
  const reasons = useMemo(
    () => current?.map((proposal) => whyNotWith(project, ticked, proposal)),
    [project, current, ticked],
  );
  if (current === null) return <p className="mends quiet">{say('Looking for ways to mend it …')}</p>;
  if (current.length === 0) {
    return (
      <p className="mends quiet">{say(lastAdvice(project, finding, askedOf(project.preferences).scopes))}</p>
    );
  }
  const allWords = say(ticked.length === 2 ? 'Both together' : 'All {count} together', {
    count: ticked.length,
  });
  return (
    // biome-ignore lint/a11y/useSemanticElements: ways to mend are no fields of a form
    <div
      className="mends"
      ref={part}
      role="group"
      aria-label={say('Ways to mend: {finding}', { finding: finding.words })}
    >
      {current.map((proposal, at) => {
        const words = say(proposal.words);
        const reason = reasons?.[at];
        return (
          <div key={words} className="mend">
            <label className="check">
              <input
                type="checkbox"
                checked={ticked.includes(proposal)}
                disabled={reason != null}
                onChange={() => tick(proposal)}
              />
              <span>{words}</span>
            </label>
            {reason ? (
              <p className="effect">{say(reason)}</p>
            ) : (
              <MendEffect effect={proposal.effect} of={words} />
            )}
          </div>
        );
      })}
      {together && ticked.length > 1 ? (
        <div className="mend">
          <strong>{allWords}</strong>
          <MendEffect effect={together} of={allWords} />
        </div>
      ) : null}
      {together ? (
        <div className="row apply">
          <button
            type="button"
            className="button solid"
            onClick={() => {
              if (!run(mend(ticked))) return;
              // The list closes up; its row, which may be out of sight by then, shows where the person was.
              const row = part.current?.closest('li');
              store.getState().showFinding(null);
              requestAnimationFrame(() => row?.scrollIntoView({ block: 'nearest' }));
            }}
          >
            {say(ticked.length === 1 ? 'Apply' : ticked.length === 2 ? 'Apply both' : 'Apply all {count}', {
              count: ticked.length,
            })}
          </button>
        </div>
      ) : null}
      <Complaint problems={problems} />
    </div>
  );
}

/** A ref for the mends; when they are first found, as much as possible of their finding is brought into sight. */
function useFoundInSight(found: boolean): RefObject<HTMLDivElement | null> {
  const part = useRef<HTMLDivElement>(null);
  const shown = useRef(false);
  useEffect(() => {
    if (!found || shown.current || !part.current) return;
    shown.current = true;
    part.current.closest('li')?.scrollIntoView({ block: 'nearest' });
  }, [found]);
  return part;
}

/** The effect of the ticked mends together; null while it is computed. */
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

/** One command for several proposals. */
function mend(proposals: readonly Proposal[]): Rearrangement {
  return rearrange(
    proposals.flatMap((one) => one.moves),
    labelOf(proposals),
  );
}

/** Why a proposal cannot be taken together with the ticked ones, or null when it can. */
function whyNotWith(project: Project, ticked: readonly Proposal[], proposal: Proposal): Phrase | null {
  const others = ticked.filter((one) => one !== proposal);
  if (others.some((one) => !canGoTogether(project, one.moves, proposal.moves)))
    return phrase('It touches the same blocks; take one or the other.');
  // Two proposals may need the same last wedge of a set.
  const outcome = others.length > 0 ? apply(project, mend([...others, proposal])) : null;
  return !outcome || outcome.ok ? null : outcome.problems[0]!.message;
}

/** The label for undo. */
function labelOf(proposals: readonly Proposal[]): Phrase {
  const [only] = proposals;
  if (proposals.length === 1 && only) {
    const { say } = only.words;
    return phrase('{change}', { change: { ...only.words, say: say.charAt(0).toLowerCase() + say.slice(1) } });
  }
  return counted(proposals.length, 'mend 1 clash', 'make {count} mends');
}
