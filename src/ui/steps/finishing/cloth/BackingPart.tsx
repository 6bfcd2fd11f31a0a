// Backing and batting: what to buy, and the battings that are large enough. Its picture lies on the large area.
import { backingName } from '../../../../cutting/yardage/backingYardage';
import { clothText, roundedUp } from '../../../../cutting/yardage/clothLength';
import type { Yardage } from '../../../../cutting/yardage/yardage';
import { changeBacking } from '../../../../editing/commands/buying';
import { sellingUnit } from '../../../../model/buying';
import { USUAL } from '../../../../model/lengths';
import type { FabricId } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { Fractions } from '../../../fields/Fractions';
import { LengthField } from '../../../fields/LengthField';
import { Swatch } from '../../../fields/Swatch';
import { useSay, useUnit } from '../../../words';

export function BackingPart({ list }: { list: Yardage }) {
  const say = useSay();
  const unitOfLengths = useUnit();
  const project = useApp((app) => app.project);
  const unit = sellingUnit(project);
  const { backing, batting } = list;
  if (!backing) return null;
  const { layout, others, fabric, apart } = backing;
  const saving = others[0]!;
  const size = { width: { inches: layout.size.width }, height: { inches: layout.size.height } };
  return (
    <div className="stack tight">
      <details className="cloth">
        <summary>
          {fabric ? <Swatch fabric={fabric} size={26} /> : null}
          <span className={fabric ? 'cloth-name' : 'cloth-name broad'}>{say(backingName(backing))}</span>
          <span className="cloth-buy">
            {apart ? <Fractions text={say(clothText(apart.buy.inches, unit))} /> : say('see its line above')}
          </span>
          {apart?.onHand ? (
            <span className="cloth-note">
              <Fractions text={say(apart.onHand.words)} />
            </span>
          ) : null}
        </summary>
        <div className="cloth-open">
          <ul className="workings">
            {[...layout.why, ...(apart?.buy.why ?? [])].map((sentence, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: sentences of one working in their order
              <li key={index}>
                <Fractions text={say(sentence)} />
              </li>
            ))}
          </ul>
          {roundedUp(layout.cloth, unit) - roundedUp(saving.cloth, unit) > 1e-6 ? (
            <p className="quiet">
              <Fractions
                text={say('With a pieced last width {cloth} of fabric would do, with {seams} seams.', {
                  cloth: { inches: saving.cloth },
                  seams: saving.seams,
                })}
              />
            </p>
          ) : null}
          <BackingFields apart={apart !== null} />
        </div>
      </details>
      <div className="spread battings">
        <span>{say('Batting')}</span>
        <span>
          {batting.length > 0
            ? say('{name}, packaged', { name: say(batting[0]!.name) })
            : say(unitOfLengths === 'in' ? 'off the roll, or two packages joined' : 'off the roll')}
        </span>
      </div>
      <p className="quiet">
        <Fractions
          text={
            batting.length > 0
              ? say('It has to cover {width} × {height}. These packages do: {names}.', {
                  ...size,
                  names: {
                    list: batting.map((one) =>
                      say('{name} {width} × {height}', {
                        name: say(one.name),
                        width: { inches: one.width },
                        height: { inches: one.height },
                      }),
                    ),
                  },
                })
              : say(
                  unitOfLengths === 'in'
                    ? 'It has to cover {width} × {height}, which no usual package does.'
                    : 'It has to cover {width} × {height}.',
                  size,
                )
          }
        />
      </p>
    </div>
  );
}

function BackingFields({ apart }: { apart: boolean }) {
  const say = useSay();
  const store = useAppStore();
  const { run } = store.getState();
  const usual = USUAL[useUnit()].overhang;
  const [chosen, problems] = useRun();
  const project = useApp((app) => app.project);
  const { backing } = project.buying;
  const { borders, sashing } = project.setting;
  const choose = (fabric: FabricId | null) => chosen(changeBacking({ fabric }));
  return (
    <div className="stack tight no-print">
      <Choice
        label="Fabric of the backing"
        value={backing.fabric === null ? 'open' : 'fabric'}
        options={[
          { value: 'open', label: 'Not chosen' },
          { value: 'fabric', label: 'A fabric' },
        ]}
        onChange={(next) => choose(next === 'open' ? null : (borders.at(-1)?.fabric ?? sashing.fabric))}
      />
      {backing.fabric === null ? null : (
        <>
          <FabricPicker label="Fabric of the backing" value={backing.fabric} onChange={choose} />
          <p className="quiet">
            {say(
              apart
                ? 'The backing is of wider fabric than the rest, so it is bought by itself.'
                : 'Its lengths are counted with all that is cut from this fabric.',
            )}
          </p>
        </>
      )}
      <Complaint problems={problems} />
      <div className="pair">
        <LengthField
          label="Extra on every side"
          value={backing.overhang}
          most={12}
          onCommit={(overhang) => run(changeBacking({ overhang }))}
        />
        <LengthField
          label="Width of the fabric"
          value={backing.width ?? project.preferences.usableWidth}
          least={10}
          most={130}
          onCommit={(width) => run(changeBacking({ width }))}
        />
      </div>
      <p className="quiet">
        <Fractions
          text={say('{far} for long-arm quilting, {near} to {middle} for a domestic machine.', {
            far: { inches: usual.longArm },
            near: { inches: usual.least },
            middle: { inches: usual.most },
          })}
        />
      </p>
      <label className="check">
        <input
          type="checkbox"
          checked={backing.pieced}
          onChange={() => run(changeBacking({ pieced: !backing.pieced }))}
        />
        {say('The last width may be pieced')}
      </label>
    </div>
  );
}
