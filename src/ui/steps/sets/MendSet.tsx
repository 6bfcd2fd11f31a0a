// A set that is too low: by how much, and a strip on hand that mends it.
import { useMemo } from 'react';
import { mendHeight } from '../../../cutting/sets/mendHeight';
import { stripsLeftBeside } from '../../../cutting/sets/stripsUnused';
import { layStrips } from '../../../editing/commands/stripSets';
import type { Strip, StripSet } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';

export function MendSet({ set }: { set: StripSet }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const mend = useMemo(
    () =>
      mendHeight(
        set,
        project.wedge,
        stripsLeftBeside(project.stripsOnHand, project.stripSets),
        project.preferences.unit,
      ),
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
