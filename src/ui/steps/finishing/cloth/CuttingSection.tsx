// The cloth to buy and how to cut it: each fabric with its lines, the backing, the batting. cutting/yardage computes the figures;
// how the pieces lie on the cloth is shown on the large area.
import { Printer } from 'lucide-react';
import { useRef } from 'react';
import { money } from '../../../../cutting/yardage/money';
import type { CuttingScope } from '../../../../cutting/yardage/setStrips';
import { totalCloth, totalCost } from '../../../../cutting/yardage/yardage';
import { sellingUnit } from '../../../../model/buying';
import { counted } from '../../../../model/phrase';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';
import { Caution } from '../../Caution';
import { BackingPart } from './BackingPart';
import { ClothChoices } from './ClothChoices';
import { FabricCloth } from './FabricCloth';
import { FoldRows } from './FoldRows';
import { printPart } from './printPart';
import { clothSumWords } from './purchaseWords';
import './cloth.css';
import { Part } from '../Part';
import { useYardage } from './useYardage';

const SCOPES: readonly { readonly value: CuttingScope; readonly label: string }[] = [
  { value: 'whole', label: 'The whole quilt' },
  { value: 'left', label: 'Still to cut' },
];

export function CuttingSection() {
  const say = useSay();
  const part = useRef<HTMLElement>(null);
  const store = useAppStore();
  const scope = useApp((app) => app.laid.scope);
  const { project, list } = useYardage();
  const cost = totalCost(list);
  const nothing = list.fabrics.every((one) => one.buy.kind === 'nothing');
  return (
    <Part
      id="cutting"
      ref={part}
      className="cloth-part"
      foot={
        <button type="button" className="button solid" onClick={() => printPart(part.current)}>
          <Printer size={16} aria-hidden /> {say('Print the list')}
        </button>
      }
    >
      <p className="print-only">
        <bdi>{project.name}</bdi>: {say(SCOPES.find((one) => one.value === scope)!.label)}
      </p>
      <div className="stack">
        <div className="no-print">
          <Choice
            label="What the list is for"
            value={scope}
            options={SCOPES}
            onChange={(next) => store.getState().lay({ scope: next })}
          />
        </div>
        <ClothChoices />
        {list.remarks.map((remark) => (
          <p key={remark.say} className="quiet">
            <Fractions text={say(remark)} />
          </p>
        ))}
        {list.fabrics.length === 0 ? <p>{say('Nothing is left to cut.')}</p> : null}
        {scope === 'left' && nothing && list.fabrics.length > 0 ? (
          <p>{say('Nothing has to be bought: what is on hand is enough.')}</p>
        ) : null}
        {list.fabrics.length > 0 ? (
          <FoldRows
            sum={say('{fabrics}: {cloth}', {
              fabrics: counted(list.fabrics.length, '1 fabric', '{count} fabrics'),
              cloth: clothSumWords(totalCloth(list.fabrics), sellingUnit(project)),
            })}
            openAll="Open all fabrics of the cutting list"
            foldAll="Fold all fabrics of the cutting list"
          >
            {list.fabrics.map((one) => (
              <FabricCloth key={one.fabric.id} yardage={one} scope={scope} />
            ))}
          </FoldRows>
        ) : null}
        <BackingPart list={list} />
        {cost === null ? null : (
          <div className="spread kit-price">
            <span>{say('All the fabric')}</span>
            <span>{say(money(cost, project))}</span>
          </div>
        )}
        <Caution about={['cutting']} />
      </div>
    </Part>
  );
}
