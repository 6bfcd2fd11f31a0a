// Several good orders that differ, as small pictures side by side. One can be shown on the wall, then kept or left.
import { Square } from 'lucide-react';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { Alternative } from '../../../arrange/alternatives';
import { inPoints } from '../../../balance/score/terms';
import { weightsOf } from '../../../balance/score/wishes';
import { apply, type Command } from '../../../editing/apply';
import { rearrange } from '../../../editing/commands/wall';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { useSeeking } from '../../session';
import { SmallTop } from '../../wall/SmallTop';
import { useSay } from '../../words';

const LABEL = phrase('hang the blocks in another order');

export function AlternativesPart({ disabled }: { disabled: boolean }) {
  const say = useSay();
  const { state, start, stop, close } = useSeeking();
  return (
    <div className="stack alternatives">
      {state.kind === 'idle' ? (
        <div>
          <button type="button" className="button" disabled={disabled} onClick={start}>
            {say('Show several to choose from')}
          </button>
          <Complaint problems={state.problems} />
        </div>
      ) : null}
      {state.kind === 'running' ? (
        <>
          <div
            className="progress"
            role="progressbar"
            aria-label={say('Looking for orders that differ')}
            aria-valuenow={Math.round(state.share * 100)}
            aria-valuemin={0}
            aria-valuemax={100}
          >
            <div style={{ transform: `scaleX(${Math.min(1, state.share)})` }} />
          </div>
          <div className="spread">
            <p className="quiet">{say('Looking for orders that differ …')}</p>
            <button type="button" className="button" onClick={stop}>
              <Square size={14} aria-hidden /> {say('Stop')}
            </button>
          </div>
        </>
      ) : null}
      {state.kind === 'offered' ? <Offered {...state} onClose={close} /> : null}
    </div>
  );
}

/** An order with the command that keeps it and the quilt that the command gives. */
interface Order {
  readonly alternative: Alternative;
  readonly command: Command;
  readonly seen: Project;
}

function ordersOf(project: Project, alternatives: readonly Alternative[]): Order[] {
  return alternatives.flatMap((alternative) => {
    const command = rearrange(alternative.moves, LABEL);
    const outcome = apply(project, command);
    return outcome.ok ? [{ alternative, command, seen: outcome.project }] : [];
  });
}

interface OfferedProps {
  alternatives: readonly Alternative[];
  capped: boolean;
  onClose: () => void;
}

function Offered({ alternatives, capped, onClose }: OfferedProps) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const orders = useMemo(() => ordersOf(project, alternatives), [project, alternatives]);
  const [chosen, setChosen] = useState<Alternative | null>(null);
  const keep = orders.find((one) => one.alternative === chosen)?.command ?? null;
  const [grey, setGrey] = useState(false);
  // The preview ends with the list it was picked from, and comes back after a change that the order does not depend on.
  useEffect(() => () => void store.getState().showPreview(null), [store]);
  const revision = useApp((app) => app.revision);
  const onShow = useRef(revision);
  useEffect(() => {
    if (onShow.current === revision) return;
    onShow.current = revision;
    if (keep) store.getState().showPreview(keep);
  }, [store, revision, keep]);
  const [run, problems] = useRun();
  const choose = ({ alternative, command }: Order) => {
    const leave = alternative === chosen;
    setChosen(leave ? null : alternative);
    store.getState().showPreview(leave ? null : command);
  };
  return (
    <section className="stack answer" aria-label={say('Orders to choose from')}>
      <p className="quiet">
        {alternatives.length > 1
          ? say(
              'The best that was found, then others that differ from it and score at most 3 points worse; a top by chance has 100. Pick one to see it on the wall.',
            )
          : say('No order that differs comes within 3 points of this one.')}
        {capped ? ` ${say('Time ran out before all were tried: another run may find others.')}` : null}
      </p>
      <label className="check">
        <input type="checkbox" checked={grey} onChange={(event) => setGrey(event.target.checked)} />
        {say('Look at them in grey')}
      </label>
      <div className={grey ? 'offers grey' : 'offers'}>
        {orders.map((order, index) => (
          <OfferedOrder
            key={JSON.stringify(order.command.moves)}
            order={order}
            number={index + 1}
            pressed={order.alternative === chosen}
            onPress={() => choose(order)}
          />
        ))}
      </div>
      <Complaint problems={problems} />
      <div className="row">
        {chosen && chosen.moves.length > 0 && keep ? (
          <button
            type="button"
            className="button solid"
            onClick={() => {
              if (run(keep)) onClose();
            }}
          >
            {say('Keep this order')}
          </button>
        ) : null}
        <button data-always type="button" className="button" onClick={onClose}>
          {say('Leave it as it was')}
        </button>
      </div>
    </section>
  );
}

function OfferedOrder(props: { order: Order; number: number; pressed: boolean; onPress: () => void }) {
  const { order, number, pressed, onPress } = props;
  const { alternative, seen } = order;
  const say = useSay();
  const weights = weightsOf(seen.preferences);
  const name = say('Order {number}', { number });
  const words =
    number === 1
      ? say('scores best, {score} points', { score: inPoints(alternative.score.total, weights).toFixed(0) })
      : unlikeTheFirst(alternative)
          .map((one) => say(one))
          .join('; ');
  return (
    <button
      type="button"
      className="offered-order"
      aria-pressed={pressed}
      aria-label={`${name}: ${words}`}
      onClick={onPress}
    >
      <SmallTop project={seen} label="" />
      <span>
        <strong>{name}</strong>: <Fractions text={words} />
      </span>
    </button>
  );
}

/** Words on what is better and worse than in the first order, and by how many points in total. */
function unlikeTheFirst({ differences, behind, apart }: Alternative): Phrase[] {
  const points = Math.round(100 * behind);
  const worse = counted(points, '1 point worse in all', '{count} points worse in all');
  const seams = phrase('{apart}% of its seams join other wedges', { apart: Math.round(100 * apart) });
  return [
    points === 0 ? phrase('as good in all') : worse,
    ...(differences.length > 0 ? differences.slice(0, 3) : [seams]),
  ];
}
