// The button that lists the moves by hand to the layout the wall shows, or that the last change gave it.
import { ListChecks } from 'lucide-react';
import { useDeferredValue, useMemo } from 'react';
import { type HandList, listBetween } from '../../../../editing/handList';
import { type History, undo } from '../../../../editing/history';
import { soundStep } from '../../../../editing/keptHistory';
import { type Phrase, phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { useHandMoves, useShuffling } from '../../../session';
import { useSay } from '../../../words';

export function ListMoves() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const shown = useApp((app) => app.preview?.project ?? null);
  const history = useApp((app) => app.history);
  const { close } = useHandMoves();
  const searching = ['running', 'proving'].includes(useShuffling().shuffle.kind);
  // While the shuffle runs, the layout on show is only its best so far: it is not compared with the wall each time.
  const now = useMemo(() => ({ project, shown, history }), [project, shown, history]);
  // All blocks are compared for it: a moment after the wall shows a change.
  const late = useDeferredValue(now);
  const offer = useMemo(() => (searching ? null : offerOf(late)), [searching, late]);
  if (!offer) return null;
  if (!offer.list) return <p className="quiet">{say(offer.words)}</p>;
  return (
    <button
      type="button"
      className="button"
      onClick={() => {
        const list = offerOf(now)?.list;
        if (!list) return;
        close();
        store.getState().lay({ moves: list, movesOpen: true });
      }}
    >
      <ListChecks size={16} aria-hidden /> {say(offer.words)}
    </button>
  );
}

interface Offer {
  readonly words: Phrase;
  readonly list: HandList | null;
}

interface Compared {
  readonly project: Project;
  /** The project of the preview. */
  readonly shown: Project | null;
  readonly history: History;
}

function offerOf({ project, shown, history }: Compared): Offer | null {
  return shown ? toLayout(project, shown) : ofLastChange(project, history);
}

function toLayout(project: Project, shown: Project): Offer {
  const list = listBetween(project, shown);
  return {
    list,
    words: list
      ? phrase('List the moves to this layout')
      : phrase(
          'This layout also changes blocks inside. For one that only moves them, tick nothing but Swap and Turn in the shuffle options.',
        ),
  };
}

function ofLastChange(project: Project, history: History): Offer | null {
  const last = history.done.at(-1);
  const before = last && soundStep(last, () => undo(project, history));
  const list = before ? listBetween(before.project, project) : null;
  return (
    list && { list, words: phrase('List the moves of the last change ({change})', { change: last!.label }) }
  );
}
