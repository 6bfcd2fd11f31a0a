// The figures of one colourway, to compare with others: clashes, spread of values, cloth to buy.
import { useMemo } from 'react';
import { totalCloth, yardage } from '../../../../cutting/yardage/yardage';
import { sellingUnit } from '../../../../model/buying';
import { counted, type Phrase, phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';
import type { Balance } from '../../../../store/analysis/analysis';
import { Fractions } from '../../../fields/Fractions';
import { useAnalysis } from '../../../useAnalysis';
import { useSay } from '../../../words';
import { clothSumWords } from '../cloth/purchaseWords';

/** The figures; until the balance is computed, those of the balance before, or dots. */
export function CardFigures({ project }: { project: Project }) {
  const say = useSay();
  const { balance, pending, reason } = useAnalysis(project);
  const unit = sellingUnit(project);
  const cloth = useMemo(
    () => clothSumWords(totalCloth(yardage(project, 'whole').fabrics), unit),
    [project, unit],
  );
  const rows: [name: string, figure: Phrase][] = [
    ['Clashes', balance ? meetings(balance) : phrase('…')],
    ['Value', balance ? values(balance) : phrase('…')],
    ['Fabric', cloth],
  ];
  return (
    <div>
      <dl className="card-figures" aria-busy={pending}>
        {rows.map(([name, figure]) => (
          <div key={name}>
            <dt>{say(name)}</dt>
            <dd>
              <Fractions text={say(figure)} />
            </dd>
          </div>
        ))}
      </dl>
      {reason ? (
        <p className="complaint">{say('Its balance could not be worked out: {reason}', { reason })}</p>
      ) : null}
    </div>
  );
}

function meetings({ clashes }: Balance): Phrase {
  if (clashes.length === 0) return phrase('none');
  const length = { inches: clashes.reduce((sum, clash) => sum + clash.inches, 0) };
  return counted(clashes.length, '1, {length}', '{count}, {length}', { length });
}

function values({ value }: Balance): Phrase {
  if (!value) return phrase('–');
  const from = Math.max(0, Math.round(value.mean - value.deviation));
  const to = Math.min(100, Math.round(value.mean + value.deviation));
  return phrase('{mean}, mostly {from} to {to}', { mean: Math.round(value.mean), from, to });
}
