// The whole quilt laid out from what is on hand by one press: the button, how far it is, and what was done.
import { LayoutGrid, Square } from 'lucide-react';
import { useState } from 'react';
import { stripsLeftBeside } from '../../cutting/sets/stripsUnused';
import type { Phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { LayingState } from '../../store/laying';
import { useApp, useAppStore } from '../app';
import { Complaint } from '../fields/Complaint';
import { Fractions } from '../fields/Fractions';
import { ProgressBar } from '../fields/ProgressBar';
import { useLaying } from '../session';
import { useSay } from '../words';
import './wall/wallStep.css';

/** The button, for any step; nothing where there is nothing to lay out. `solid` where it is the step's main action. */
export function LayOutQuilt({ solid = false }: { solid?: boolean }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { state, start } = useLaying();
  const [cut, setCut] = useState(false);
  const { strips, fabric, work } = onHand(project);
  if (state.kind === 'running') return <Running state={state} />;
  if (!strips && !fabric && !work) return null;
  return (
    <>
      {strips && fabric ? (
        <label className="check">
          <input type="checkbox" checked={cut} onChange={(event) => setCut(event.target.checked)} />
          {say('Cut the fabric on hand too')}
        </label>
      ) : null}
      <button
        type="button"
        className={solid && (strips || fabric) ? 'button solid' : 'button'}
        title={say(
          'Makes strip sets, chooses wedges for blocks, hangs and shuffles them. One undo takes it back.',
        )}
        onClick={() => start({ want: 'most', cut: cut && fabric })}
      >
        <LayoutGrid size={16} aria-hidden /> {say('Lay out the whole quilt')}
      </button>
      {state.kind === 'idle' ? <Complaint problems={state.problems} /> : null}
      {state.kind === 'done' && !state.changed ? <Words words={state.words} /> : null}
    </>
  );
}

/** What there is to lay out: loose strips, fabric to cut, and sets or blocks. */
function onHand(project: Project): { strips: boolean; fabric: boolean; work: boolean } {
  const { clothOnHand, stripsOnHand, stripSets, blocks } = project;
  return {
    strips: stripsLeftBeside(stripsOnHand, stripSets).length > 0,
    fabric: clothOnHand.some((row) => row.count > 0),
    work: stripSets.length > 0 || blocks.length > 0,
  };
}

/** How far it is, then what was done, with a way back; nothing unless the quilt was just laid out. */
export function LaidOut() {
  const say = useSay();
  const store = useAppStore();
  const { state, another, close } = useLaying();
  if (state.kind === 'running') return <Running state={state} />;
  if (state.kind === 'idle') return <Complaint problems={state.problems} />;
  return (
    <section className="stack answer" aria-label={say('The quilt laid out')}>
      <Words words={state.words} />
      <div className="row">
        {state.changed ? (
          <>
            <button type="button" className="button" onClick={() => store.getState().undo()}>
              {say('Undo')}
            </button>
            <button type="button" className="button" onClick={another}>
              {say('Try another mix')}
            </button>
          </>
        ) : null}
        <button type="button" className="button" onClick={close}>
          {say('Close')}
        </button>
      </div>
    </section>
  );
}

function Words({ words }: { words: readonly Phrase[] }) {
  const say = useSay();
  const [first, ...rest] = words;
  return (
    <div>
      {first ? (
        <p>
          <strong>
            <Fractions text={say(first)} />
          </strong>
        </p>
      ) : null}
      {rest.map((sentence) => (
        <p key={say(sentence)} className="quiet">
          <Fractions text={say(sentence)} />
        </p>
      ))}
    </div>
  );
}

const STAGES = {
  sets: 'Making strip sets …',
  blocks: 'Choosing wedges for the blocks …',
  shuffle: 'Shuffling the blocks …',
} as const;

function Running({ state }: { state: Extract<LayingState, { kind: 'running' }> }) {
  const say = useSay();
  const { stop } = useLaying();
  const { stage, share } = state.progress;
  return (
    <div className="stack laying">
      <ProgressBar label={say('Laying out the quilt')} share={share} />
      <div className="spread">
        <p className="quiet">{say(STAGES[stage])}</p>
        <button type="button" className="button" onClick={stop}>
          <Square size={14} aria-hidden /> {say('Stop')}
        </button>
      </div>
    </div>
  );
}
