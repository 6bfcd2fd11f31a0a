// The list of moves to make at the wall, on the large area: each step with its words and small pictures, to tick off; before it, how
// much each further block gives, to choose how many to move.
import { X } from 'lucide-react';
import { useEffect, useMemo } from 'react';
import { rearrange } from '../../../../editing/commands/wall';
import { type HandList, hangsAs, listFits, movesOfList, tick, touchedBy } from '../../../../editing/handList';
import { counted, phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { ProgressBar } from '../../../fields/ProgressBar';
import { useHandMoves, useSeeking, useShuffling } from '../../../session';
import { CopyWords } from '../../../steps/finishing/CopyWords';
import { printPart } from '../../../steps/finishing/cloth/printPart';
import { useEscape } from '../../../useEscape';
import { SmallTop } from '../../../wall/SmallTop';
import { useSay, useWrite } from '../../../words';
import { useOpened } from '../../useOpened';
import { LAYOUT_LABEL } from '../layouts';
import './byHand.css';
import { stepLines, stepTitle } from './handWords';
import { NumberOfBlocks } from './NumberOfBlocks';
import { StepPictures } from './StepPictures';

export default function MovesByHand() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const list = useApp((app) => app.laid.moves);
  const { state } = useHandMoves();
  const close = () => store.getState().lay({ movesOpen: false });
  const heading = useOpened<HTMLHeadingElement>();
  useEscape(close);
  useEffect(() => store.getState().enlargeWall(false), [store]);
  const readable = list === null || listFits(project, list);
  return (
    <div className="by-hand wants-room">
      <header>
        <h2 ref={heading} tabIndex={-1}>
          {say('Moves by hand')}
        </h2>
        <button type="button" className="button" data-always onClick={close}>
          <X size={16} aria-hidden /> {say('Close')}
        </button>
      </header>
      {state.kind === 'offered' ? <NumberOfBlocks found={state.found} list={list} /> : null}
      {!readable ? (
        <p className="sheet-of-paper">
          {say(
            'The list is of another wall: some of its blocks are gone, or the setting has changed. Undo brings it back.',
          )}
        </p>
      ) : list ? (
        <TheList project={project} list={list} />
      ) : (
        <NoList />
      )}
    </div>
  );
}

/** Where no list is chosen yet: how far the search is, or how a list is made. */
function NoList() {
  const say = useSay();
  const { state } = useHandMoves();
  if (state.kind === 'offered') return null;
  return (
    <div className="sheet-of-paper">
      {state.kind === 'running' ? (
        <>
          <p>{say('Looking for what a few moves can do …')}</p>
          <ProgressBar label={say('Looking for the moves')} share={state.share} />
        </>
      ) : (
        <p>
          {say('There is no list. Look for a few moves, or shuffle and list the moves to the new layout.')}
        </p>
      )}
    </div>
  );
}

function TheList({ project, list }: { project: Project; list: HandList }) {
  const say = useSay();
  const store = useAppStore();
  const { steps, ticked } = list;
  const all = ticked.length === steps.length;
  return (
    <>
      <div className="sheet-of-paper hand-head">
        <BeforeAndAfter project={project} list={list} />
        <div className="stack">
          <p role="status">
            <strong>
              {all
                ? say(counted(steps.length, 'The move is made.', 'All {count} moves are made.'))
                : say(
                    counted(steps.length, '{made} of 1 move made.', '{made} of {count} moves made.', {
                      made: ticked.length,
                    }),
                  )}
            </strong>
          </p>
          <p className="quiet">
            {say(
              counted(
                touchedBy(list),
                '1 block is touched.',
                '{count} blocks are touched, each once. Turns come first, then swaps, then rounds of more.',
              ),
            )}
          </p>
          <OnScreen project={project} list={list} />
          <div className="row">
            <ListAsWords project={project} list={list} />
            <button
              type="button"
              className="button"
              onClick={() => printPart(document.querySelector<HTMLElement>('.panel .moves-on-paper'))}
            >
              {say('Print the list')}
            </button>
          </div>
        </div>
      </div>
      <ol className="hand-steps">
        {steps.map((step, at) => {
          const made = ticked.includes(at);
          const title = say(stepTitle(project, step));
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place in the list
            <li key={at} className={made ? 'sheet-of-paper made' : 'sheet-of-paper'}>
              <label className="hand-tick">
                <input
                  type="checkbox"
                  checked={made}
                  onChange={({ target }) => store.getState().lay({ moves: tick(list, at, target.checked) })}
                />
                <span>
                  <b>{at + 1}.</b> {title}
                  {made ? <em> {say('made')}</em> : null}
                </span>
              </label>
              <ul>
                {stepLines(project, list, step).map((line) => (
                  <li key={say(line)}>{say(line)}</li>
                ))}
              </ul>
              <StepPictures project={project} list={list} step={step} />
            </li>
          );
        })}
      </ol>
    </>
  );
}

function BeforeAndAfter({ project, list }: { project: Project; list: HandList }) {
  const say = useSay();
  const { before, after, touched } = useMemo(
    () => ({
      before: { ...project, wall: list.from },
      after: { ...project, wall: list.to },
      touched: new Set(list.steps.flatMap(({ carries }) => carries.map(({ block }) => block))),
    }),
    [project, list.from, list.to, list.steps],
  );
  const words = 'Ringed: the blocks that are touched.';
  return (
    <div className="hand-tops">
      <figure>
        <SmallTop project={before} label={say('The wall before. {words}', { words })} ringed={touched} />
        <figcaption>{say('Before')}</figcaption>
      </figure>
      <figure>
        <SmallTop project={after} label={say('The wall after. {words}', { words })} ringed={touched} />
        <figcaption>{say('After')}</figcaption>
      </figure>
    </div>
  );
}

/** How the quilt hangs on screen; where it hangs as before, it can be hung as after. */
function OnScreen({ project, list }: { project: Project; list: HandList }) {
  const say = useSay();
  const { leave } = useShuffling();
  const { close } = useSeeking();
  const [run, problems] = useRun();
  const hangs = hangsAs(project, list);
  if (hangs === 'after') return <p className="quiet">{say('On screen the wall hangs like this already.')}</p>;
  if (hangs === 'otherwise')
    return <p className="quiet">{say('On screen the wall hangs otherwise; the list stays as it is.')}</p>;
  return (
    <div className="row">
      <button
        type="button"
        className="button solid"
        onClick={() => {
          // What shows the layout is put away before the quilt becomes it.
          leave();
          close();
          run(rearrange(movesOfList(list), LAYOUT_LABEL));
        }}
      >
        {say('Use this layout')}
      </button>
      <Complaint problems={problems} />
    </div>
  );
}

function ListAsWords({ project, list }: { project: Project; list: HandList }) {
  const write = useWrite();
  const text = () =>
    list.steps
      .flatMap((step, at) => {
        const lines = stepLines(project, list, step).map((line) => `   ${write(line)}`);
        return [
          write(phrase('{number}. {step}', { number: at + 1, step: stepTitle(project, step) })),
          ...lines,
        ];
      })
      .join('\n');
  return <CopyWords name="Copy the list" text={text} />;
}
