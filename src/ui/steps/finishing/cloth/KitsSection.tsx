// Kits: their number, cost and order, and the labelled strips of one kit. cutting/kits computes the figures.
import { FileDown, Printer } from 'lucide-react';
import { useRef } from 'react';
import { orderCsv, stripsCsv } from '../../../../cutting/kits/kitTables';
import { money } from '../../../../cutting/yardage/money';
import { counted, phrase } from '../../../../model/phrase';
import { fileName } from '../../../../store/storage/projectFiles';
import { Fractions } from '../../../fields/Fractions';
import { Saved } from '../../../fields/Saved';
import { useSaveFile } from '../../../useSaveFile';
import { useSay, useWrite } from '../../../words';
import { Caution } from '../../Caution';
import { FoldRows } from './FoldRows';
import { KitChoices } from './KitChoices';
import { KitBackingRow, KitFabricRow } from './KitRow';
import { PrecutPart } from './PrecutPart';
import { printPart } from './printPart';
import './cloth.css';
import { Part } from '../Part';
import { useKits } from './useKits';

export function KitsSection() {
  const say = useSay();
  const write = useWrite();
  const { saveText, saved } = useSaveFile();
  const part = useRef<HTMLElement>(null);
  const { project, made } = useKits();
  const save = (ending: string, text: string) =>
    // The byte-order mark tells spreadsheets that the text is UTF-8.
    saveText(fileName(`${project.name} ${ending}`, '.csv'), `\uFEFF${text}`, 'text/csv;charset=utf-8');
  const foot = (
    <>
      <button
        type="button"
        className="button solid"
        onClick={() => save(write(phrase('order')), orderCsv(project, made, write))}
      >
        <FileDown size={16} aria-hidden /> {say('Save the order (CSV)')}
      </button>
      <Saved words={saved} />
    </>
  );
  return (
    <Part id="kits" ref={part} className="cloth-part" foot={foot}>
      <p className="print-only">
        <bdi>{project.name}</bdi>
      </p>
      <div className="stack">
        <KitChoices backingApart={made.backing !== null} fabrics={made.fabrics.map((one) => one.fabric)} />
        <div className="spread kit-price">
          <span>{say('One kit')}</span>
          <span>{made.price === null ? '–' : say(money(made.price, project))}</span>
        </div>
        {made.unpriced.length > 0 ? (
          <p className="quiet">
            {made.unpriced.length === made.fabrics.length + Number(made.backing !== null)
              ? say('Write a price and the kit has one.')
              : say('No price yet for {names}.', { names: { list: made.unpriced.map((one) => say(one)) } })}
          </p>
        ) : null}
        {made.together === null || made.count === 1 ? null : (
          <p className="quiet">
            {say('{count} kits: {sum}.', { count: made.count, sum: money(made.together, project) })}
          </p>
        )}
        {made.remarks.map((remark) => (
          <p key={remark.say} className="quiet">
            <Fractions text={say(remark)} />
          </p>
        ))}
        <FoldRows
          sum={say(counted(made.fabrics.length, '1 fabric in a kit', '{count} fabrics in a kit'))}
          openAll="Open all fabrics of a kit"
          foldAll="Fold all fabrics of a kit"
        >
          {made.fabrics.map((one) => (
            <KitFabricRow key={one.fabric.id} one={one} count={made.count} />
          ))}
          {made.backing ? <KitBackingRow backing={made.backing} /> : null}
        </FoldRows>
        {made.precuts ? <PrecutPart precuts={made.precuts} count={made.count} /> : null}
        <div className="row no-print">
          {made.fabrics.some((one) => one.strips.length > 0) ? (
            <button
              type="button"
              className="button"
              onClick={() => save(write(phrase('labels')), stripsCsv(project, made, write))}
            >
              <FileDown size={16} aria-hidden /> {say('Save the labels (CSV)')}
            </button>
          ) : null}
          <button type="button" className="button" onClick={() => printPart(part.current)}>
            <Printer size={16} aria-hidden /> {say('Print')}
          </button>
        </div>
        <Caution about={['cutting']} />
      </div>
    </Part>
  );
}
