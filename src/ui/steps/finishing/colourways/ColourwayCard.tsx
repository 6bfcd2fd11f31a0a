// One colourway: its picture, how it balances beside the quilt on the wall, and what stands for what.
import { ChevronDown } from 'lucide-react';
import { useDeferredValue, useMemo } from 'react';
import { swapsByValue } from '../../../../balance/colourway';
import { sellingUnit } from '../../../../cutting/yardage/clothLength';
import { yardage } from '../../../../cutting/yardage/yardage';
import { changeSwap, removeColourway, renameColourway, wearColourway } from '../../../../editing/colourways';
import { fabricsInUse, inColourway, standsFor } from '../../../../model/colourway';
import { nameWith } from '../../../../model/name';
import type { Colourway } from '../../../../model/project';
import { balanceAtOnce } from '../../../../store/analysis';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { Fractions } from '../../../fields/Fractions';
import { Swatch } from '../../../fields/Swatch';
import { TextField } from '../../../fields/TextField';
import { useSession } from '../../../session';
import { SmallTop } from '../../../wall/SmallTop';
import { useSay } from '../../../words';
import { purchaseWords } from '../cloth/purchaseWords';

export function ColourwayCard(props: { colourway: Colourway; open: boolean; onOpen: () => void }) {
  const { colourway, open, onOpen } = props;
  const say = useSay();
  const project = useDeferredValue(useApp((app) => app.project));
  const seen = useMemo(() => inColourway(project, colourway), [project, colourway]);
  const analysis = useMemo(() => balanceAtOnce(seen), [seen]);
  const inches = analysis.clashes.reduce((sum, clash) => sum + clash.inches, 0);
  return (
    <li className="colourway">
      <SmallTop project={seen} label={say('The quilt in {name}', { name: colourway.name })} />
      <button type="button" className="button bare colourway-name" aria-expanded={open} onClick={onOpen}>
        <bdi className="grow">{colourway.name}</bdi>
        <ChevronDown size={16} aria-hidden />
      </button>
      <p className="quiet">
        <Fractions
          text={say('{count} meetings, {length} in all; value {mean} ± {spread}', {
            count: analysis.clashes.length,
            length: { inches },
            mean: Math.round(analysis.value?.mean ?? 0),
            spread: Math.round(analysis.value?.deviation ?? 0),
          })}
        />
      </p>
      {open ? <OpenColourway colourway={colourway} /> : null}
    </li>
  );
}

function OpenColourway({ colourway }: { colourway: Colourway }) {
  const say = useSay();
  const store = useAppStore();
  const session = useSession();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const inUse = fabricsInUse(project);
  const turnOver = () => {
    const worn = inUse.flatMap(
      ({ id }) => project.fabrics.find((one) => one.id === standsFor(colourway, id)) ?? [],
    );
    for (const swap of swapsByValue(inUse, worn, 'turned over')) {
      run(changeSwap(store.getState().project, colourway.id, swap.fabric, swap.by));
    }
  };
  return (
    <div className="stack open-colourway">
      <TextField
        label="Name of the colourway"
        value={colourway.name}
        onCommit={(name) => store.getState().run(renameColourway(colourway.id, name))}
      />
      <ClothOfColourway colourway={colourway} />
      <ul className="swaps">
        {inUse.map((fabric) => (
          <li key={fabric.id}>
            <Swatch fabric={fabric} size={32} />
            <FabricPicker
              label={say('In place of {name}', { name: fabric.name })}
              value={standsFor(colourway, fabric.id)}
              onChange={(by) => run(changeSwap(project, colourway.id, fabric.id, by))}
            />
          </li>
        ))}
      </ul>
      <div className="row">
        <button type="button" className="button" onClick={turnOver}>
          {say('Turn lights and darks over')}
        </button>
        <button type="button" className="button" onClick={() => run(wearColourway(project, colourway.id))}>
          {say('Make the quilt in it')}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => {
            const worn = { ...inColourway(project, colourway), colourways: [] };
            void session.openAsCopy(worn, nameWith(project.name, `, ${colourway.name}`));
          }}
        >
          {say('Open as a quilt of its own')}
        </button>
        <button type="button" className="button" onClick={() => run(removeColourway(project, colourway.id))}>
          {say('Remove')}
        </button>
      </div>
      <Complaint problems={problems} />
    </div>
  );
}

/** The cloth a whole quilt in this colourway takes, fabric by fabric. */
function ClothOfColourway({ colourway }: { colourway: Colourway }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const list = useMemo(() => yardage(inColourway(project, colourway), 'whole'), [project, colourway]);
  const unit = sellingUnit(project);
  return (
    <details>
      <summary>{say('Cloth for it')}</summary>
      <ul className="colourway-cloth">
        {list.fabrics.map(({ fabric, buy }) => (
          <li key={fabric.id} className="spread">
            <bdi>{fabric.name}</bdi>
            <span>
              <Fractions text={say(purchaseWords(buy, unit))} />
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
