// Precut strips as a substitute for cloth: the number of each fabric for the strip sets, and the least number of rolls.
import { leastRolls, type PrecutStrips } from '../../../../cutting/kits/precutStrips';
import { changeKits } from '../../../../editing/commands/buying';
import { USUAL } from '../../../../model/lengths';
import { counted, phrase } from '../../../../model/phrase';
import { useApp, useAppStore } from '../../../app';
import { CountField } from '../../../fields/CountField';
import { Fractions } from '../../../fields/Fractions';
import { useSay, useUnit } from '../../../words';
import '../../wall/setting/setting.css';

const MOST_PER_ROLL = 200;

export function PrecutPart({ precuts, count }: { precuts: PrecutStrips; count: number }) {
  const say = useSay();
  const unit = useUnit();
  const { run } = useAppStore().getState();
  const stripsPerRoll = useApp((app) => app.project.buying.kits.stripsPerRoll);
  const rolls = leastRolls(precuts, count, stripsPerRoll);
  const needs = phrase('From precut strips {width} wide the sets of one kit take {strips}.', {
    width: { inches: USUAL[unit].precut.width },
    strips: precuts.strips,
  });
  const least = counted(
    rolls,
    'If a roll holds these fabrics in these numbers, 1 roll is enough. A mixed roll holds what it holds: then order the strips by fabric.',
    'If a roll holds these fabrics in these numbers, {count} rolls are enough. A mixed roll holds what it holds: then order the strips by fabric.',
  );
  return (
    <details className="fold alone">
      <summary>
        <span className="name">{say('From precut strips')}</span>
        <span className="quiet now">{say(counted(precuts.strips * count, '1 strip', '{count} strips'))}</span>
      </summary>
      <div className="stack">
        <p>
          <Fractions text={say(needs)} />
        </p>
        <table className="precuts" aria-label={say('Precut strips by fabric')}>
          <thead>
            <tr>
              <th scope="col">{say('Fabric')}</th>
              <th scope="col">{say('One kit')}</th>
              <th scope="col">{say(counted(count, '1 kit', '{count} kits'))}</th>
            </tr>
          </thead>
          <tbody>
            {precuts.perFabric.map(({ fabric, strips }) => (
              <tr key={fabric.id}>
                <th scope="row">
                  <bdi>{fabric.name}</bdi>
                </th>
                <td>{strips}</td>
                <td>{strips * count}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <div className="no-print">
          <CountField
            label="Strips in a roll"
            value={stripsPerRoll}
            least={1}
            most={MOST_PER_ROLL}
            onCommit={(next) => run(changeKits({ stripsPerRoll: next }))}
          />
        </div>
        <p className="quiet">{say(least)}</p>
      </div>
    </details>
  );
}
