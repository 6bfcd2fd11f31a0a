// Planning backwards: from cloth and strips on hand to the largest top, what runs out first, and what to buy for more.
import { Ruler } from 'lucide-react';
import { useDeferredValue, useMemo, useState } from 'react';
import { afterCutting } from '../../../cutting/afterCutting';
import { type ClothBasket, clothToBuy, largestTop } from '../../../cutting/largestTop';
import { stripsLeftBeside } from '../../../cutting/stripsUnused';
import { availableWedges } from '../../../cutting/yield';
import { cutFromCloth } from '../../../editing/clothOnHand';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { CountField } from '../../fields/CountField';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { Caution } from '../Caution';
import { useReturnFocus } from '../useReturnFocus';
import { type Look, LookChoice, USUAL_LOOK, wantedWidths } from './LookChoice';
import { StripsTable } from './StripsTable';

const MOST_BLOCKS = 400;

export function PlanBackwards() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [open, setOpen] = useState(false);
  const [look, setLook] = useState<Look>(USUAL_LOOK);
  const opener = useReturnFocus(open);
  if (project.clothOnHand.length === 0 && project.stripsOnHand.length === 0) return null;
  if (!open) {
    return (
      <button ref={opener} type="button" className="button fab-add" onClick={() => setOpen(true)}>
        <Ruler size={16} aria-hidden /> {say('How large a top does it make')}
      </button>
    );
  }
  return (
    <section className="stack" aria-label={say('The largest top')}>
      <h3>{say('The largest top')}</h3>
      <LookChoice look={look} onChange={setLook} />
      <Top look={look} />
      <div>
        <button type="button" className="button" onClick={() => setOpen(false)}>
          {say('Done')}
        </button>
      </div>
    </section>
  );
}

/** What is there to cut: background cloth is kept for corners and sashing, strips sewn into sets are counted in those. */
function basketOf(project: Project, look: Look): ClothBasket {
  const fabrics = project.fabrics.filter((fabric) => !fabric.background);
  const free = new Set(fabrics.map((fabric) => fabric.id));
  const wedges = project.stripSets.map((set) => availableWedges(set, project.wedge));
  const there = wedges.reduce((sum, one) => ({ up: sum.up + one.up, down: sum.down + one.down }), {
    up: 0,
    down: 0,
  });
  return {
    fabrics,
    clothOnHand: project.clothOnHand.filter((row) => free.has(row.fabric)),
    stripsOnHand: stripsLeftBeside(project.stripsOnHand, project.stripSets).filter((row) =>
      free.has(row.fabric),
    ),
    wedge: project.wedge,
    widths: wantedWidths(look),
    ...(project.stripSets.length > 0 ? { there } : {}),
  };
}

function Top({ look }: { look: Look }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const shown = useDeferredValue(look);
  const basket = useMemo(() => basketOf(project, shown), [project, shown]);
  const top = useMemo(() => largestTop(basket), [basket]);
  const after = useMemo(
    () =>
      afterCutting(
        project,
        top.pieces,
        basket.widths.map((one) => one.width),
        project.wedge.seam,
      ),
    [project, top, basket],
  );
  const kept = project.fabrics.some(
    (fabric) => fabric.background && project.clothOnHand.some((row) => row.fabric === fabric.id),
  );
  return (
    <>
      <ul className="onhand-words" aria-live="polite">
        {top.words.map((words, index) => (
          <li key={words.say} className={index === 0 ? undefined : 'quiet'}>
            <Fractions text={say(words)} />
          </li>
        ))}
        {kept ? <li className="quiet">{say('Background cloth is kept for corners and sashing.')}</li> : null}
      </ul>
      {top.strips.length > 0 ? (
        <StripsTable
          fabrics={project.fabrics.filter((fabric) => top.left.some((row) => row.fabric === fabric.id))}
          strips={top.strips}
          last="Left"
          lengths={top.left}
        />
      ) : null}
      {after.cut > 0 ? (
        <div>
          <button
            type="button"
            className="button solid"
            onClick={() => run(cutFromCloth(store.getState().project, after))}
          >
            {say(counted(after.cut, 'Cut: put 1 strip on the list', 'Cut: put {count} strips on the list'))}
          </button>
        </div>
      ) : null}
      <Complaint problems={problems} />
      <ToBuy basket={basket} blocks={top.blocks} />
      {after.cut > 0 ? <Caution about={['cutting']} /> : null}
    </>
  );
}

/** What to buy for a number of blocks; worked out when asked, for the cloth as it is. */
function ToBuy({ basket, blocks }: { basket: ClothBasket; blocks: number }) {
  const say = useSay();
  const usable = useApp((app) => app.project.preferences.usableWidth);
  const [wanted, setWanted] = useState<number | null>(null);
  const [answer, setAnswer] = useState<{ readonly of: ClothBasket; readonly words: Phrase } | null>(null);
  const count = wanted ?? Math.min(MOST_BLOCKS, blocks + 1);
  const ask = () => {
    const buy = clothToBuy(basket, count, usable);
    const none = phrase('Even fifty yards more would not make {blocks} blocks of these strips.', {
      blocks: count,
    });
    setAnswer({ of: basket, words: buy?.words ?? none });
  };
  return (
    <div className="stack onhand-buy">
      <div className="row">
        <CountField
          label="Blocks wanted"
          value={count}
          least={1}
          most={MOST_BLOCKS}
          onCommit={(next) => {
            setWanted(next);
            setAnswer(null);
            return [];
          }}
        />
        <button type="button" className="button" onClick={ask}>
          {say('What to buy')}
        </button>
      </div>
      <p role="status">{answer?.of === basket ? <Fractions text={say(answer.words)} /> : null}</p>
    </div>
  );
}
