// The open colourway: its name, the cloth it takes, its swaps, and the commands on it.
import { ArrowLeft } from 'lucide-react';
import { useDeferredValue, useMemo } from 'react';
import { swapsByValue } from '../../../../cloth/colourway';
import { yardage } from '../../../../cutting/yardage/yardage';
import {
  changeSwaps,
  listClothOf,
  removeColourway,
  renameColourway,
  wearColourway,
} from '../../../../editing/commands/colourways';
import { sellingUnit } from '../../../../model/buying';
import { fabricsInUse, inColourway, standsFor } from '../../../../model/colourway';
import { nameWith } from '../../../../model/name';
import type { Colourway, Project } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { Fractions } from '../../../fields/Fractions';
import { Swatch } from '../../../fields/Swatch';
import { TextField } from '../../../fields/TextField';
import { useSession } from '../../../session';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';
import { purchaseWords } from '../cloth/purchaseWords';
import { Part } from '../Part';
import { PicturesStay } from './PicturesStay';
import { useWorn } from './useWorn';

export function OpenColourway({ colourway }: { colourway: Colourway }) {
  const say = useSay();
  const store = useAppStore();
  useEscape(() => store.getState().lay({ colourway: null }));
  const session = useSession();
  const project = useApp((app) => app.project);
  const worn = useWorn(useDeferredValue(project), useDeferredValue(colourway));
  const [run, problems] = useRun();
  const inUse = fabricsInUse(project);
  const cloth = [...project.fabrics, ...(colourway.cloth ?? [])];
  const turnOver = () => {
    const standing = inUse.flatMap(
      ({ id }) => cloth.find((one) => one.id === standsFor(colourway, id)) ?? [],
    );
    run(changeSwaps(project, colourway.id, swapsByValue(inUse, standing, 'turnedOver')));
  };
  const openAsQuilt = () => {
    const own = { ...inColourway(project, colourway), colourways: [] };
    void session.openAsCopy(own, nameWith(project.name, `, ${colourway.name}`));
  };
  const acts: [name: string, act: () => void][] = [
    ['Invert lights and darks', turnOver],
    ['Open as a quilt of its own', openAsQuilt],
    ...(colourway.cloth
      ? [
          ['Add its fabrics to the quilt’s', () => run(listClothOf(project, colourway.id))] satisfies [
            string,
            () => void,
          ],
        ]
      : []),
    ['Remove', () => run(removeColourway(project, colourway.id))],
  ];
  const foot = (
    <>
      <button
        type="button"
        className="button solid"
        onClick={() => run(wearColourway(project, colourway.id))}
      >
        {say('Use this colourway')}
      </button>
      <Complaint problems={problems} />
    </>
  );
  return (
    <Part id="colourways" foot={foot}>
      <div className="stack">
        <div>
          <button type="button" className="button" onClick={() => store.getState().lay({ colourway: null })}>
            <ArrowLeft size={16} aria-hidden /> {say('All colourways')}
          </button>
        </div>
        <TextField
          label="Name of the colourway"
          value={colourway.name}
          onCommit={(name) => store.getState().run(renameColourway(colourway.id, name), 'here')}
        />
        <ClothOfColourway worn={worn} />
        <PicturesStay />
        {colourway.cloth ? (
          <p className="quiet">
            {say('Its made-up fabrics are not among the quilt’s; they join them when the colourway is used.')}
          </p>
        ) : null}
        <ul className="swaps">
          {inUse.map((fabric) => (
            <li key={fabric.id}>
              <Swatch fabric={fabric} size={32} />
              <FabricPicker
                label={say('In place of {name}', { name: fabric.name })}
                value={standsFor(colourway, fabric.id)}
                fabrics={cloth}
                onChange={(by) => run(changeSwaps(project, colourway.id, [{ fabric: fabric.id, by }]))}
              />
            </li>
          ))}
        </ul>
        <div className="row">
          {acts.map(([name, act]) => (
            <button key={name} type="button" className="button" onClick={act}>
              {say(name)}
            </button>
          ))}
        </div>
      </div>
    </Part>
  );
}

/** The cloth for a whole quilt in this colourway, fabric by fabric. */
function ClothOfColourway({ worn }: { worn: Project }) {
  const say = useSay();
  const list = useMemo(() => yardage(worn, 'whole'), [worn]);
  const unit = sellingUnit(worn);
  return (
    <details>
      <summary>{say('Its fabrics')}</summary>
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
