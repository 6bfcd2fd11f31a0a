// The height of a set as a bar with a mark at the height needed, and a strip to add to a set that is too low.
import { useMemo } from 'react';
import { mendHeight } from '../../../cutting/sets/mendHeight';
import { stripsLeftBeside } from '../../../cutting/sets/stripsUnused';
import { layStrips } from '../../../editing/commands/stripSets';
import { heightShort, setHeight } from '../../../geometry/stripSet';
import type { Strip, StripSet } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { heightWords } from './heightWords';

export function HeightBar({ set }: { set: StripSet }) {
  const say = useSay();
  const wedge = useApp((app) => app.project.wedge);
  const height = setHeight(set.strips, wedge.seam);
  const short = heightShort(height, wedge);
  const whole = Math.max(height, wedge.cutHeight) * 1.08;
  const part = (inches: number) => `${(inches / whole) * 100}%`;
  return (
    <div>
      <div className="set-bar" aria-hidden>
        <span className="set-bar-there" style={{ width: part(height) }} />
        {short > 0 ? (
          <span className="set-bar-short" style={{ left: part(height), width: part(short) }} />
        ) : null}
        <span className="set-bar-need" style={{ left: part(wedge.cutHeight) }} />
      </div>
      <p>
        <Fractions
          text={say('{state}; the wedge needs {needed}.', {
            state: heightWords(height, wedge),
            needed: { inches: wedge.cutHeight },
          })}
        />
      </p>
      <Mend set={set} />
    </div>
  );
}

function Mend({ set }: { set: StripSet }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const mend = useMemo(
    () => mendHeight(set, project.wedge, stripsLeftBeside(project.stripsOnHand, project.stripSets)),
    [set, project],
  );
  if (!mend || set.strips.length === 0) return null;
  const names = mend.add.map(
    ({ strip }) => project.fabrics.find((one) => one.id === strip.fabric)?.name ?? '',
  );
  return (
    <div className="stack set-mend">
      <p className="complaint">
        <Fractions text={say(mend.words)} />
      </p>
      {mend.add.length > 0 ? (
        <button
          type="button"
          className="button"
          onClick={() => {
            const grown: Strip[] = [...set.strips];
            for (const { strip, at } of mend.add) grown.splice(at, 0, strip);
            run(layStrips(store.getState().project, set.id, grown));
          }}
        >
          <span>
            <Fractions
              text={
                mend.add.length === 1
                  ? say('Add the {width} strip of {name}', {
                      width: { inches: mend.add[0]!.strip.width },
                      name: names[0]!,
                    })
                  : say('Add strips of {names}', { names: { list: names } })
              }
            />
          </span>
        </button>
      ) : null}
      <Complaint problems={problems} />
    </div>
  );
}
