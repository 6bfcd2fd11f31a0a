// One fabric of the kits: the cloth of one kit, the order for all kits, and the labelled strips.
import type { Bolts } from '../../../../cutting/kits/bolts';
import type { KitFabric, Kits } from '../../../../cutting/kits/kits';
import { backingName } from '../../../../cutting/yardage/backingYardage';
import { clothText, roundedDown, roundedUp } from '../../../../cutting/yardage/clothLength';
import { fatQuarterWords } from '../../../../cutting/yardage/fatQuarter';
import { priceText } from '../../../../cutting/yardage/money';
import { type SellingUnit, sellingUnit } from '../../../../model/buying';
import { counted, type Phrase, phrase } from '../../../../model/phrase';
import { useApp } from '../../../app';
import { Fractions } from '../../../fields/Fractions';
import { Swatch } from '../../../fields/Swatch';
import { useSay } from '../../../words';
import { inKit } from './kitWords';

export function KitFabricRow({ one, count }: { one: KitFabric; count: number }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const unit = sellingUnit(project);
  const asStrips = one.strips.length > 0;
  return (
    <li>
      <details className="cloth">
        <summary>
          <Swatch fabric={one.fabric} size={26} />
          <span className="cloth-name">
            <span className="number">{one.number}</span> <bdi>{one.fabric.name}</bdi>
          </span>
          <span className="cloth-buy">
            <Fractions text={say(inKit(one, asStrips, unit))} />
          </span>
        </summary>
        <div className="cloth-open">
          <p className="quiet">
            {one.withBacking ? `${say('With the backing.')} ` : null}
            <Fractions text={say(orderWords(one, count, unit))} />
          </p>
          {asStrips ? (
            <ol className="kit-strips">
              {one.strips.map((strips) => (
                <li key={strips.label}>
                  <span className="kit-label">{strips.label}</span>
                  <span>
                    <Fractions
                      text={say(
                        counted(
                          strips.count,
                          '1 strip {width} × {length}',
                          '{count} strips {width} × {length}',
                          {
                            width: { inches: strips.width },
                            length: { inches: strips.length },
                          },
                        ),
                      )}
                    />
                    <span className="quiet"> {strips.uses.map((use) => say(use)).join('; ')}</span>
                  </span>
                </li>
              ))}
            </ol>
          ) : null}
          {one.fatQuarters > 0 ? (
            <p className="quiet">
              <Fractions text={say(fatQuarterWords(project))} />
            </p>
          ) : null}
          {one.costWords === null ? null : (
            <p>
              <Fractions text={say('In one kit: {working}', { working: one.costWords })} />
            </p>
          )}
          {typeof one.fabric.price === 'number' ? (
            <p className="quiet">
              {say('At a price of its own: {price}.', { price: priceText(one.fabric.price, project) })}
            </p>
          ) : null}
        </div>
      </details>
    </li>
  );
}

export function KitBackingRow({ backing }: { backing: NonNullable<Kits['backing']> }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const unit = sellingUnit(project);
  return (
    <li className="cloth">
      <div className="cloth-row">
        <span className="cloth-name broad">{say(backingName(backing))}</span>
        <span className="cloth-buy">
          <Fractions text={say(clothText(backing.inches, unit))} />
        </span>
        <span className="cloth-note quiet">
          <Fractions text={say(boltWords(backing.order, unit))} />
          {backing.costWords === null ? null : (
            <>
              {' '}
              <Fractions text={say('In one kit: {working}', { working: backing.costWords })} />
            </>
          )}
        </span>
      </div>
    </li>
  );
}

function orderWords(one: KitFabric, count: number, unit: SellingUnit): Phrase {
  if (one.fatQuarters > 0) return phrase('Order {count} fat quarters.', { count: one.fatQuarters * count });
  return boltWords(one.order, unit);
}

function boltWords(order: Bolts | null, unit: SellingUnit): Phrase {
  if (!order) return phrase('One strip is longer than a bolt.');
  const values = {
    sum: clothText(roundedUp(order.taken, unit), unit),
    left: clothText(roundedDown(order.left, unit), unit),
  };
  return counted(
    order.bolts,
    '{sum} for all: 1 bolt, {left} left on it.',
    '{sum} for all: {count} bolts, {left} left on the last.',
    values,
  );
}
