// A plan of strips: the strips to cut, the cloth to buy for them and for the setting, and a button that puts the strips on the list.
import { useMemo } from 'react';
import { planStrips } from '../../../../cutting/plan/planStrips';
import { settingCloth } from '../../../../cutting/top/topSize';
import { clothText, toBuy } from '../../../../cutting/yardage/clothLength';
import { writeDownStrips } from '../../../../editing/commands/stripsOnHand';
import { sellingUnit } from '../../../../model/buying';
import { counted, phrase } from '../../../../model/phrase';
import type { Fabric } from '../../../../model/project';
import { rowWords } from '../../../../model/words/rowWords';
import { useApp } from '../../../app';
import { Apart } from '../../../fields/Apart';
import { Complaint, useRun } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';
import { Caution } from '../../Caution';
import { type Look, wantedWidths } from './LookChoice';
import { StripsTable } from './StripsTable';
import type { Wanted } from './WantedTop';

interface Props {
  wanted: Wanted;
  look: Look;
  cloths: readonly Fabric[];
  onClose: () => void;
}

export function Planned({ wanted, look, cloths, onClose }: Props) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { wedge, preferences, buying } = project;
  const length = preferences.usableWidth;
  const { blocks } = wanted;
  const [run, problems] = useRun();
  const plan = useMemo(
    () =>
      planStrips({
        blocks,
        wedge,
        widths: wantedWidths(look),
        fabrics: cloths.map((fabric) => fabric.id),
        length,
      }),
    [blocks, look, cloths, wedge, length],
  );
  if (cloths.length === 0) return <p>{say('Choose at least one fabric.')}</p>;
  if (!plan) {
    return <p>{say('No strip set of these widths and this length gives wedges of the planned size.')}</p>;
  }
  const count = plan.strips.reduce((sum, row) => sum + row.count, 0);
  const unit = sellingUnit(project);
  const cloth = new Map(plan.cloth.map(({ fabric, inches }) => [fabric, toBuy(inches, buying, unit).inches]));
  return (
    <>
      <StripsTable
        name={say('Strips to cut, by fabric and width')}
        fabrics={cloths}
        strips={plan.strips}
        last="To buy"
        lastOf={(fabric) => say(clothText(cloth.get(fabric) ?? 0, unit))}
      />
      <ul className="onhand-words">
        {plan.words.map((words) => (
          <li key={words.say} className="quiet">
            <Fractions text={say(words)} />
          </li>
        ))}
        <li className="quiet">
          {say('What to buy is new fabric, with the straightening and shrinkage set under Finishing.')}
        </li>
      </ul>
      <Round wanted={wanted} />
      <Complaint problems={problems} />
      <div className="row">
        <button
          type="button"
          className="button solid"
          onClick={() => {
            if (run(writeDownStrips(plan.strips.map((row) => ({ ...row, length }))))) onClose();
          }}
        >
          {say(counted(count, 'Add this strip', 'Add these {count} strips'))}
        </button>
        <button type="button" className="button" onClick={onClose}>
          {say('Done')}
          <Apart of={say('What to cut')} />
        </button>
      </div>
      <Caution about={['cutting']} of={say('What to cut')} />
    </>
  );
}

/** The size of the top, and the cloth for corners, sashing, borders and binding. */
function Round({ wanted: { project, size } }: { wanted: Wanted }) {
  const say = useSay();
  const cloth = useMemo(
    () => (size ? settingCloth(project, size, project.clothOnHand) : []),
    [project, size],
  );
  if (!size) return null;
  const words = phrase('Around the blocks, for {rows}, {width} × {height} finished:', {
    rows: rowWords(size),
    width: { inches: size.width },
    height: { inches: size.height },
  });
  return (
    <div>
      <p>
        <Fractions text={say(words)} />
      </p>
      <ul className="onhand-words">
        {cloth.map((row) => (
          <li key={row.fabric.id}>
            <Fractions text={say(row.words)} />
          </li>
        ))}
      </ul>
    </div>
  );
}
