// Where there is no strip set to enter blocks by: so many sets that stand in, in the person's own fabrics or in made-up ones.
import { standIns } from '../../../../cloth/standIns';
import { addStandInSets } from '../../../../editing/entering/sewnSets';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { CountField } from '../../../fields/CountField';
import { Fractions } from '../../../fields/Fractions';
import { useSay, useWrite } from '../../../words';
import { useEntering } from './useEntering';

/** As many sets as have a letter of their own, so that each is one key. */
const MOST_SETS = 26;
const MOST_STRIPS = 12;
const MOST_FABRICS = 60;

export function StandInSets() {
  const say = useSay();
  const write = useWrite();
  const store = useAppStore();
  const wedge = useApp((app) => app.project.wedge);
  const own = useApp((app) => app.project.fabrics.filter(({ background }) => !background).length);
  const [{ standing }, change] = useEntering();
  const [run, problems, clear] = useRun();
  const set = (to: Partial<typeof standing>): [] => {
    clear();
    change({ standing: { ...standing, ...to } });
    return [];
  };
  const add = () => {
    const fabrics = own > 0 ? [] : standIns(Math.max(standing.fabrics, standing.strips));
    run(
      addStandInSets(
        fabrics.map(({ name, colour }) => ({
          name: write(name),
          colour,
          cloth: { kind: 'plain' },
          background: false,
        })),
        standing,
      ),
    );
  };
  return (
    <div className="sheet-of-paper no-blocks">
      <h3>{say('How many strip sets are the blocks from?')}</h3>
      <p className="quiet">
        {say(
          own > 0
            ? 'A block is entered by the letters of its sets. These sets hold your fabrics in turn; change their strips to those you sewed at any time.'
            : 'A block is entered by the letters of its sets. These sets hold made-up fabrics; give them your own colours and names at any time.',
        )}
      </p>
      <div className="row">
        <CountField
          label="Strip sets"
          value={standing.sets}
          least={1}
          most={MOST_SETS}
          onCommit={(sets) => set({ sets })}
        />
        <CountField
          label="Strips per set"
          value={standing.strips}
          least={1}
          most={MOST_STRIPS}
          onCommit={(strips) => set({ strips })}
        />
        {own > 0 ? null : (
          <CountField
            label="Fabrics"
            value={standing.fabrics}
            least={1}
            most={MOST_FABRICS}
            onCommit={(fabrics) => set({ fabrics })}
          />
        )}
      </div>
      <p>
        <Fractions
          text={say(
            'The wedge: {count} to the block, cut {height} high. If yours differs, change it first.',
            {
              count: wedge.perBlock,
              height: { inches: wedge.cutHeight },
            },
          )}
        />
      </p>
      <div className="row">
        <button type="button" className="button solid" data-once onClick={add}>
          {say('Enter the wedges')}
        </button>
        <button type="button" className="button" onClick={() => store.getState().goTo('wedges')}>
          {say('Change the wedge')}
        </button>
        <button type="button" className="button" onClick={() => store.getState().goTo('sets')}>
          {say('Enter the sets strip by strip')}
        </button>
      </div>
      <Complaint problems={problems} />
    </div>
  );
}
