// The cloth to buy and how to cut it: each fabric with its lines, the backing, the batting. cutting/yardage computes the figures.
import { Printer } from 'lucide-react';
import { useDeferredValue, useMemo, useRef, useState } from 'react';
import { sellingUnit } from '../../../../cutting/yardage/clothLength';
import { money } from '../../../../cutting/yardage/money';
import type { CuttingScope } from '../../../../cutting/yardage/setStrips';
import { totalCloth, totalCost, yardage } from '../../../../cutting/yardage/yardage';
import { counted } from '../../../../model/phrase';
import { useApp } from '../../../app';
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
import { PartHeading } from '../PartHeading';

const SCOPES: readonly { readonly value: CuttingScope; readonly label: string }[] = [
  { value: 'whole', label: 'The whole quilt' },
  { value: 'left', label: 'Still to cut' },
];

export function CuttingSection() {
  const say = useSay();
  const part = useRef<HTMLElement>(null);
  const [scope, setScope] = useState<CuttingScope>('whole');
  const project = useDeferredValue(useApp((app) => app.project));
  const list = useMemo(() => yardage(project, scope), [project, scope]);
  const cost = totalCost(list);
  const nothing = list.fabrics.every((one) => one.buy.kind === 'nothing');
  return (
    <section ref={part} className="cloth-part" aria-labelledby="cutting-title">
      <PartHeading id="cutting-title" />
      <p className="print-only">
        <bdi>{project.name}</bdi>: {say(SCOPES.find((one) => one.value === scope)!.label)}
      </p>
      <div className="stack">
        <div className="no-print">
          <Choice label="What the list is for" value={scope} options={SCOPES} onChange={setScope} />
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
            <span>{say('All the cloth')}</span>
            <span>{money(cost, project)}</span>
          </div>
        )}
        <div className="row no-print">
          <button type="button" className="button" onClick={() => printPart(part.current)}>
            <Printer size={16} aria-hidden /> {say('Print the list')}
          </button>
        </div>
        <Caution about={['cutting']} />
      </div>
    </section>
  );
}
