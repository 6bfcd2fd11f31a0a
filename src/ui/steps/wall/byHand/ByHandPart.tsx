// Moves to make by hand at the wall: the list for the layout on show, or what a few blocks can do. The list lies on the large area
// (stage/wall/byHand/).
import { ListChecks } from 'lucide-react';
import { useState } from 'react';
import { askedOf } from '../../../../arrange/search/effort';
import { listFits } from '../../../../editing/handList';
import { phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint } from '../../../fields/Complaint';
import { CountField } from '../../../fields/CountField';
import { useHandMoves } from '../../../session';
import { stepLines, stepTitle } from '../../../stage/wall/byHand/handWords';
import { useSay } from '../../../words';
import { whyNoShuffle } from '../shuffle/whyNoShuffle';
import { ListMoves } from './ListMoves';
import '../../finishing/cloth/cloth.css';

/** Blocks that are looked for unless the person says otherwise, and at most: more is what the shuffle is for. */
const USUAL = 6;
const MOST = 30;

export function ByHandPart() {
  const say = useSay();
  const store = useAppStore();
  const list = useApp((app) => app.laid.moves);
  return (
    <section aria-labelledby="by-hand-part">
      <h3 id="by-hand-part">{say('Moves by hand')}</h3>
      <p className="quiet">
        {say('What to turn and swap at the real wall, fewest blocks first, to tick off as you go.')}
      </p>
      <div className="stack" style={{ marginTop: 8 }}>
        {list ? (
          <div className="row">
            <button
              type="button"
              className="button solid"
              onClick={() => store.getState().lay({ movesOpen: true })}
            >
              <ListChecks size={16} aria-hidden />{' '}
              {say('Open the list: {made} of {count} made', {
                made: list.ticked.length,
                count: list.steps.length,
              })}
            </button>
            <button
              type="button"
              className="button"
              onClick={() => store.getState().lay({ moves: null, movesOpen: false })}
            >
              {say('Throw the list away')}
            </button>
          </div>
        ) : (
          <ListMoves />
        )}
        <LookForFew />
      </div>
    </section>
  );
}

function LookForFew() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const begun = useApp((app) => (app.laid.moves?.ticked.length ?? 0) > 0);
  const { state, start } = useHandMoves();
  const hung = project.wall.cells.filter((cell) => cell !== null).length;
  const most = Math.max(1, Math.min(MOST, hung));
  const [typed, setTyped] = useState(USUAL);
  const wanted = Math.min(typed, most);
  if (state.kind === 'running') return null;
  const why = whyNot(project);
  return (
    <>
      <div className="row" style={{ alignItems: 'flex-end' }}>
        <CountField
          label="Blocks to move at most"
          value={wanted}
          least={1}
          most={most}
          onCommit={(value) => {
            setTyped(value);
            return [];
          }}
        />
        <button
          type="button"
          className="button"
          disabled={why !== null || begun}
          onClick={() => {
            store.getState().lay({ moves: null, movesOpen: true });
            start(wanted);
          }}
        >
          {say('Find what a few moves can do')}
        </button>
      </div>
      {why ? <p className="quiet">{say(why)}</p> : null}
      <Complaint problems={state.kind === 'idle' ? state.problems : []} />
    </>
  );
}

function whyNot(project: Project) {
  const why = whyNoShuffle(project);
  if (why === 'empty') return phrase('Nothing hangs on the wall yet.');
  if (why === 'bare') return phrase('The blocks have no wedges yet, so there is nothing to move.');
  if (why === 'unminding')
    return phrase('Nothing counts yet: give at least one part of the score some weight.');
  const { swap, turn } = askedOf(project.preferences).scopes;
  return swap || turn
    ? null
    : phrase('Nothing is allowed to move: let blocks change places or turn, in the shuffle options.');
}

/** The list on paper, without pictures: one line to a block, with a square to tick. */
export function MovesOnPaper() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const list = useApp((app) => app.laid.moves);
  if (!list || !listFits(project, list)) return null;
  return (
    <div className="cloth-part print-only moves-on-paper">
      <h2>{say('Moves by hand')}</h2>
      <p>{project.name || say('Untitled quilt')}</p>
      <ol>
        {list.steps.map((step, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place in the list
          <li key={at}>
            <strong>
              {list.ticked.includes(at) ? '☑' : '☐'} {say(stepTitle(project, step))}
            </strong>
            {stepLines(project, list, step).map((line) => (
              <div key={say(line)}>{say(line)}</div>
            ))}
          </li>
        ))}
      </ol>
    </div>
  );
}
