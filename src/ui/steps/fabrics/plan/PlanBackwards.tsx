// Planning backwards: the largest top from cloth and strips on hand, what runs out first, and what to buy for more blocks.
import { Ruler } from 'lucide-react';
import { useDeferredValue, useMemo, useState } from 'react';
import { afterCutting } from '../../../../cutting/plan/afterCutting';
import { cuttingPlan } from '../../../../cutting/plan/asTheyAre';
import { clothBasket } from '../../../../cutting/plan/clothBasket';
import { type ClothToBuy, clothToBuy, toBuyWords } from '../../../../cutting/plan/clothToBuy';
import type { ClothBasket, LargestTop } from '../../../../cutting/plan/largestTop';
import type { MadeSets } from '../../../../cutting/sets/randomSets';
import { topFit } from '../../../../cutting/top/topSize';
import { cutFromCloth } from '../../../../editing/commands/clothOnHand';
import { laySets } from '../../../../editing/commands/stripSets';
import { sellingUnit } from '../../../../model/buying';
import { counted, type Phrase, phrase } from '../../../../model/phrase';
import type { Fabric, FabricId } from '../../../../model/project';
import type { Inches } from '../../../../model/units';
import { useApp, useAppStore } from '../../../app';
import { Apart } from '../../../fields/Apart';
import { Complaint, useRun } from '../../../fields/Complaint';
import { CountField } from '../../../fields/CountField';
import { Fractions } from '../../../fields/Fractions';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';
import { Caution } from '../../Caution';
import { useReturnFocus } from '../../useReturnFocus';
import { AsTheyAre } from './AsTheyAre';
import { type Look, LookChoice, useLook, wantedWidths } from './LookChoice';
import { StripsTable } from './StripsTable';
import { useAsTheyAre } from './useAsTheyAre';

const MOST_BLOCKS = 400;

export function PlanBackwards() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [open, setOpen] = useState(false);
  const [look, setLook] = useLook();
  const opener = useReturnFocus(open);
  useEscape(() => setOpen(false), open);
  if (project.clothOnHand.length === 0 && project.stripsOnHand.length === 0) return null;
  if (!open) {
    return (
      <button ref={opener} type="button" className="button fab-add" onClick={() => setOpen(true)}>
        <Ruler size={16} aria-hidden /> {say('How large a top it makes')}
      </button>
    );
  }
  return (
    <section className="stack" aria-label={say('The largest top')}>
      <h3>{say('The largest top')}</h3>
      <Answers look={look} onLook={setLook} />
      <div>
        <button type="button" className="button" onClick={() => setOpen(false)}>
          {say('Done')}
          <Apart of={say('The largest top')} />
        </button>
      </div>
    </section>
  );
}

/** The strips as they are first, then what cutting them and the cloth makes. */
function Answers({ look, onLook }: { look: Look; onLook: (look: Look) => void }) {
  const answer = useAsTheyAre();
  return (
    <>
      <AsTheyAre answer={answer} />
      <LookChoice look={look} onChange={onLook} />
      <Top look={look} made={answer.made} />
    </>
  );
}

function Top({ look, made }: { look: Look; made: MadeSets | null }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const shown = useDeferredValue(look);
  const basket = useMemo(() => clothBasket(project, wantedWidths(shown)), [project, shown]);
  const sets = made && made.sets.length > 0 ? made.sets : null;
  const plan = useMemo(() => cuttingPlan(project, basket, sets), [project, basket, sets]);
  const { top, lay } = plan;
  const after = useMemo(() => afterCutting(project, top.pieces, project.wedge.seam), [project, top]);
  const fit = useMemo(() => topFit(project, top.blocks, after.clothOnHand), [project, top, after]);
  const kept = project.fabrics.some(
    (fabric) => fabric.background && project.clothOnHand.some((row) => row.fabric === fabric.id),
  );
  return (
    <>
      <ul className="onhand-words" aria-live="polite">
        {[...plan.words, ...(fit?.words ?? [])].map((words, index) => (
          <li key={say(words)} className={index === 0 || words === fit?.words[0] ? undefined : 'quiet'}>
            <Fractions text={say(words)} />
          </li>
        ))}
        {kept && !fit ? (
          <li className="quiet">{say('Background fabric is set aside for corners and sashing.')}</li>
        ) : null}
      </ul>
      <CutTables top={top} fabrics={project.fabrics} />
      {after.cut > 0 ? (
        <div>
          <button
            type="button"
            className="button solid"
            onClick={() => {
              const now = store.getState().project;
              run(lay ? laySets(now, lay, after) : cutFromCloth(now, after));
            }}
          >
            {say(cutLabel(after.cut, lay?.length ?? 0))}
          </button>
        </div>
      ) : null}
      <Complaint problems={problems} />
      <ToBuy basket={plan.buyFor.basket} blocks={plan.buyFor.blocks} />
      {after.cut > 0 ? <Caution about={['cutting']} of={say('The largest top')} /> : null}
    </>
  );
}

function cutLabel(strips: number, sets: number): Phrase {
  const cut = counted(strips, 'Cut and add 1 strip', 'Cut and add {count} strips');
  if (sets === 0) return cut;
  const lay = counted(sets, 'Lay 1 set', 'Lay {count} sets');
  return phrase('{lay}. {cut}', { lay, cut });
}

/** The strips to cut: one table for each length of set; the last table shows what is left of each fabric. */
function CutTables({ top, fabrics }: { top: LargestTop; fabrics: readonly Fabric[] }) {
  const say = useSay();
  if (top.strips.length === 0) return null;
  const given = (fabric: FabricId) => top.strips.some((row) => row.fabric === fabric);
  const left = (fabric: FabricId) => top.left.find((row) => row.fabric === fabric)?.inches ?? 0;
  // Leaves out fabrics that are not cut and of which nothing is left.
  const rows = fabrics.filter(({ id }) => given(id) || left(id) > 1e-9);
  const text = (inches: Inches) => say('{length}', { length: { inches } });
  if (top.sets.length < 2) {
    return (
      <StripsTable
        name={say('Strips for the largest top, by fabric and width')}
        fabrics={rows}
        strips={top.strips}
        last="Left"
        lastOf={(id) => text(left(id))}
      />
    );
  }
  return top.sets.map(({ length }, at) => {
    const strips = top.strips.filter((row) => Math.abs(row.length - length) < 1e-9);
    const last = at === top.sets.length - 1;
    const used = rows.filter(
      ({ id }) => strips.some((row) => row.fabric === id) || (last && left(id) > 1e-9),
    );
    const name = say('Strips {length} long for the largest top, by fabric and width', {
      length: { inches: length },
    });
    return (
      <div key={length} className="stack">
        <p className="quiet">
          <Fractions text={say('Strips cut {length} long', { length: { inches: length } })} />
        </p>
        {last ? (
          <StripsTable
            name={name}
            fabrics={used}
            strips={strips}
            last="Left"
            lastOf={(id) => text(left(id))}
          />
        ) : (
          <StripsTable name={name} fabrics={used} strips={strips} />
        )}
      </div>
    );
  });
}

/** The cloth to buy for a number of blocks; computed when the person asks for it. */
function ToBuy({ basket, blocks }: { basket: ClothBasket; blocks: number }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [wanted, setWanted] = useState<number | null>(null);
  const [answer, setAnswer] = useState<{ readonly of: ClothBasket; readonly buy: ClothToBuy } | null>(null);
  const count = wanted ?? Math.min(MOST_BLOCKS, blocks + 1);
  const unit = sellingUnit(project);
  const ask = () => {
    const { usableWidth } = project.preferences;
    setAnswer({ of: basket, buy: clothToBuy(basket, count, { usableWidth, unit, buying: project.buying }) });
  };
  const buy = answer?.of === basket ? answer.buy : null;
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
      <div role="status">
        {buy ? (
          <>
            <p>
              <Fractions text={say(buy.words)} />
            </p>
            <ul className="onhand-words">
              {buy.fabrics.map((row) => (
                <li key={row.fabric.id}>
                  <Fractions text={say(toBuyWords(row, unit))} />
                </li>
              ))}
            </ul>
            {buy.fabrics.length > 0 ? (
              <p className="quiet">
                {say(
                  'With the straightening and shrinkage set under Finishing; a step less of any of these would not be enough. Corners and sashing are extra.',
                )}
              </p>
            ) : null}
          </>
        ) : null}
      </div>
    </div>
  );
}
