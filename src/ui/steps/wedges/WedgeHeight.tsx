// The cut height of the wedge. A height that the sets do not give is refused with the ways out of it; they go when their cause goes.
import { useEffect, useRef, useState } from 'react';
import { setMakingOf } from '../../../cutting/sets/randomSets';
import { TALLEST, tallestWedge } from '../../../cutting/wedges/tallest';
import { apply, type Command } from '../../../editing/apply';
import { fromSameCloth } from '../../../editing/commands/sameCloth';
import { changeHeightEmptying } from '../../../editing/commands/sets/wedgesPerBlock';
import { changeWedge, replaceSets } from '../../../editing/commands/stripSets';
import { nameWith } from '../../../model/name';
import { counted, phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import type { Problem } from '../../../model/result';
import type { Inches } from '../../../model/units';
import { type RunningMaking, startMaking } from '../../../store/sets/makingSets';
import { useApp, useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { LengthField } from '../../fields/LengthField';
import { useSession } from '../../session';
import { useEscape } from '../../useEscape';
import { useSay, useWrite } from '../../words';

export function WedgeHeight() {
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [wanted, setWanted] = useState<Inches | null>(null);
  const [round, setRound] = useState(0);
  const refused = wanted !== null && !apply(project, changeWedge({ cutHeight: wanted })).ok;
  const gone = wanted !== null && !refused;
  useEffect(() => {
    if (!gone) return;
    // The cause is gone, so the refused text and the reason under it leave the field.
    setWanted(null);
    setRound((before) => before + 1);
  }, [gone]);
  const leave = () => {
    setWanted(null);
    setRound((before) => before + 1);
  };
  return (
    <div className="stack wdg-height">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: Escape or other text in the field drops the ways out of what was refused */}
      <div
        onInput={() => setWanted(null)}
        onKeyDown={(event) => (event.key === 'Escape' ? setWanted(null) : undefined)}
      >
        <LengthField
          key={round}
          label="Cut height"
          value={project.wedge.cutHeight}
          least={1}
          most={TALLEST}
          onCommit={(cutHeight) => {
            const command = changeWedge({ cutHeight });
            const outcome = apply(project, command);
            setWanted(outcome.ok ? null : cutHeight);
            // Said once, under the field: the store would say a refusal on the wall too.
            return outcome.ok ? store.getState().run(command, 'here') : outcome.problems;
          }}
        />
      </div>
      {wanted !== null && refused ? <WaysOut key={wanted} wanted={wanted} onLeave={leave} /> : null}
    </div>
  );
}

const CHANGED = phrase('The quilt changed while the sets were made. Make them again.');
const NO_SETS = phrase('The strips on hand make no set that high. Nothing has changed.');

function WaysOut({ wanted, onLeave }: { wanted: Inches; onLeave: () => void }) {
  useEscape(onLeave);
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const making = useRef<RunningMaking | null>(null);
  const [busy, setBusy] = useState(false);
  useEffect(() => () => making.current?.cancel(), []);
  const tallest = tallestWedge(project);
  const can = (command: Command) => apply(project, command).ok;
  const { seed } = project.preferences;
  const lower = tallest === null ? null : changeWedge({ cutHeight: tallest });
  const emptying = changeHeightEmptying(wanted);
  const anew = apply(project, replaceSets(project, [], seed, wanted));
  const hasStrips = project.stripsOnHand.some(({ count }) => count > 0);
  const fail = (message: Problem['message']) => setProblems([{ code: 'no-sets', path: 'wedge', message }]);
  const make = async () => {
    const { project: asked, revision } = store.getState();
    making.current = startMaking(setMakingOf(withHeight(asked, wanted), { blocks: blocksOf(asked) }, seed));
    setBusy(true);
    const answer = await making.current.answer;
    setBusy(false);
    if (answer === null) return;
    if (!answer.ok) return setProblems(answer.problems);
    if (store.getState().revision !== revision) return fail(CHANGED);
    if (answer.value.sets.length === 0) return fail(NO_SETS);
    setProblems(store.getState().run(replaceSets(asked, answer.value.sets, seed, wanted), 'here'));
  };
  const takeLower = () => {
    if (lower && store.getState().run(lower).length === 0) onLeave();
  };
  const height = { height: { inches: wanted } };
  const outcome = apply(project, changeWedge({ cutHeight: wanted }));
  const heldByCut = !outcome.ok && outcome.problems[0]?.code === 'wedge-held';
  return (
    <div className="stack">
      <div className="row">
        {lower && tallest !== project.wedge.cutHeight && can(lower) ? (
          <button data-always type="button" className="button" onClick={takeLower}>
            <span>
              <Fractions text={say('Use {height}', { height: { inches: tallest! } })} />
            </span>
          </button>
        ) : null}
        {anew.ok && hasStrips ? (
          <button
            data-always
            type="button"
            className="button"
            aria-disabled={busy}
            onClick={() => void make()}
          >
            <span>
              <Fractions text={busy ? say('Making …') : say(anewWords(project, anew.project, wanted))} />
            </span>
          </button>
        ) : null}
        {can(emptying) ? (
          <button data-always type="button" className="button" onClick={() => store.getState().run(emptying)}>
            <span>
              <Fractions text={say('Empty the blocks and use {height}', height)} />
            </span>
          </button>
        ) : null}
        {heldByCut ? <NewQuilt wanted={wanted} onDone={onLeave} /> : null}
        <button data-always type="button" className="button" onClick={onLeave}>
          {say('Cancel')}
        </button>
      </div>
      <Complaint problems={problems} />
    </div>
  );
}

/** Where cut wedges hold the height: a quilt of its own from what is not sewn yet. */
function NewQuilt({ wanted, onDone }: { wanted: Inches; onDone: () => void }) {
  const say = useSay();
  const write = useWrite();
  const session = useSession();
  const project = useApp((app) => app.project);
  const height = { height: { inches: wanted } };
  const begin = () => {
    onDone();
    const fresh = fromSameCloth(project, project.wedge.perBlock);
    void session.openAsCopy(withHeight(fresh, wanted), nameWith(project.name, write(', {height}', height)));
  };
  return (
    <button data-always type="button" className="button" onClick={begin}>
      <span>
        <Fractions text={say('New quilt from these fabrics, wedges {height} high', height)} />
      </span>
    </button>
  );
}

function withHeight(project: Project, cutHeight: Inches): Project {
  return { ...project, wedge: { ...project.wedge, cutHeight } };
}

/** Names the making, with how many blocks lose wedges by it. */
function anewWords(before: Project, after: Project, wanted: Inches) {
  const wedgesIn = (project: Project, at: number) =>
    project.blocks[at]!.places.filter((place) => place !== null).length;
  const emptied = before.blocks.filter((_, at) => wedgesIn(after, at) < wedgesIn(before, at)).length;
  const height = { height: { inches: wanted } };
  if (emptied === 0) return phrase('Make new sets for {height}', height);
  return counted(
    emptied,
    'Make new sets for {height} and empty 1 block',
    'Make new sets for {height} and empty {count} blocks',
    height,
  );
}

/** As many blocks as there are, or as the wall has cells for. */
function blocksOf(project: Project): number {
  return Math.max(project.blocks.length, project.wall.cells.length);
}
