// Several good layouts side by side, large enough to judge, with what differs ringed. One is seen on the wall by a press on
// its picture; each can be used at once.
import { useEffect, useMemo, useRef, useState } from 'react';
import { weightsOf } from '../../../balance/score/wishes';
import type { Standing } from '../../../balance/standing';
import type { FoundAlternatives } from '../../../store/arranging/alternativesClient';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { seeAs } from '../../seeing/ways';
import { useSeeking, useSession } from '../../session';
import { useAnalysis } from '../../useAnalysis';
import { useEscape } from '../../useEscape';
import { SmallTop } from '../../wall/SmallTop';
import { standingWords } from '../../wall/standing/standingWords';
import { useSay } from '../../words';
import { ChoiceButtons } from './ChoiceButtons';
import { foundWords, type Layout, layoutsOf, unlikeTheFirst } from './layouts';

export function LayoutsToChoose({ alternatives, cut }: FoundAlternatives) {
  const say = useSay();
  const store = useAppStore();
  const { close } = useSeeking();
  useEscape(close);
  const project = useApp((app) => app.project);
  const preview = useApp((app) => app.preview);
  const grey = useApp((app) => app.look.way === 'grey');
  const layouts = useMemo(() => layoutsOf(project, alternatives), [project, alternatives]);
  const [run, problems] = useRun();
  const chosen = layouts.find((one) => sameMoves(one, preview?.command.moves))?.command ?? null;
  useEffect(() => {
    // What is to be chosen from comes first; a press on a picture makes the wall large.
    store.getState().enlargeWall(false);
    return () => void store.getState().showPreview(null);
  }, [store]);
  // A change that the layouts do not depend on ends the preview; then it comes back.
  const revision = useApp((app) => app.revision);
  const last = useRef({ revision, chosen });
  useEffect(() => {
    const before = last.current;
    last.current = { revision, chosen: before.revision === revision ? chosen : before.chosen };
    if (before.revision !== revision && before.chosen) store.getState().showPreview(before.chosen);
  }, [store, revision, chosen]);
  return (
    <div className="to-choose">
      <header>
        <h2>{say('Layouts to choose from')}</h2>
        <p>
          {foundWords(alternatives.length, cut)
            .map((one) => say(one))
            .join(' ')}
        </p>
        <label className="check">
          <input
            type="checkbox"
            checked={grey}
            onChange={(event) => seeAs(store.getState(), event.target.checked ? 'grey' : 'colour')}
          />
          {say('In grey, to judge the values')}
        </label>
        <Complaint problems={problems} />
      </header>
      <ul>
        {layouts.map((layout, index) => (
          <LayoutCard
            key={JSON.stringify(layout.command.moves)}
            layout={layout}
            number={index + 1}
            pressed={layout.command === chosen}
            onSee={() => {
              store.getState().showPreview(layout.command);
              store.getState().enlargeWall(true);
            }}
            onUse={() => {
              if (layout.command.moves.length === 0 || run(layout.command)) close();
            }}
            onCancel={close}
          />
        ))}
      </ul>
    </div>
  );
}

/** How the wall stands in a layout, as the line under the wall has it; null while it is worked out. */
function useStandingOf({ command: { moves } }: Layout): Standing | null {
  const { analysing } = useSession();
  const project = useApp((app) => app.project);
  const { balance } = useAnalysis(project);
  const [known, setKnown] = useState<Standing | null>(null);
  const ready = balance?.project === project;
  useEffect(() => {
    if (!ready) return;
    let wanted = true;
    void analysing
      .standing(project, moves, () => wanted)
      .then((standing) => {
        if (wanted) setKnown(standing);
      });
    return () => {
      wanted = false;
    };
  }, [analysing, project, moves, ready]);
  return known;
}

function sameMoves(layout: Layout, moves: unknown): boolean {
  return layout.command.moves.length > 0 && layout.command.moves === moves;
}

interface CardProps {
  layout: Layout;
  number: number;
  pressed: boolean;
  onSee: () => void;
  onUse: () => void;
  onCancel: () => void;
}

function LayoutCard({ layout, number, pressed, onSee, onUse, onCancel }: CardProps) {
  const say = useSay();
  const { alternative, seen, ringed } = layout;
  const weights = weightsOf(seen.preferences);
  const name = say('Layout {number}', { number });
  const standing = useStandingOf(layout);
  const figures = standing ? standingWords(standing, null, weights).map((one) => say(one)) : [];
  const words = number === 1 ? [say('the best found')] : unlikeTheFirst(alternative).map((one) => say(one));
  return (
    <li aria-label={name}>
      <button
        type="button"
        className="choice-picture"
        aria-pressed={pressed}
        aria-label={say('See layout {number} on the wall', { number })}
        title={say('See it on the wall')}
        onClick={onSee}
      >
        <SmallTop project={seen} label="" ringed={ringed.blocks} />
      </button>
      <p>
        <strong>{[name, ...figures].join(' · ')}</strong>: <Fractions text={words.join('; ')} />.{' '}
        <span className="quiet">{say(ringed.words)}</span>
      </p>
      <ChoiceButtons of={name} onUse={onUse} onCancel={onCancel} />
    </li>
  );
}
