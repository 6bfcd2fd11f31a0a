// Corners, sashing and borders: their fabrics and finished widths.
import { Plus, X } from 'lucide-react';
import {
  addBorder,
  changeBorder,
  changeCorners,
  changeSashing,
  removeBorder,
} from '../../../editing/setting';
import { useApp, useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { FabricPicker } from '../../fields/FabricPicker';
import { LengthField } from '../../fields/LengthField';
import { useSay } from '../../words';

export function SettingPart() {
  const say = useSay();
  const store = useAppStore();
  const { cornerFabric, sashing, borders } = useApp((app) => app.project.setting);
  const run = store.getState().run;
  return (
    <section className="stack" aria-label={say('Corners, sashing and borders')}>
      <h3 style={{ margin: 0 }}>{say('Corners, sashing, borders')}</h3>
      <FabricPicker
        label="Corner triangles"
        value={cornerFabric}
        onChange={(fabric) => run(changeCorners(fabric))}
      />
      <Choice
        label="Sashing"
        value={sashing.where}
        options={[
          { value: 'none', label: 'None' },
          { value: 'between', label: 'Between' },
          { value: 'around', label: 'Between and around' },
        ]}
        onChange={(where) => run(changeSashing({ where }))}
      />
      {sashing.where === 'none' ? null : (
        <div className="width-and-cloth">
          <LengthField
            label="Finished width"
            value={sashing.width}
            least={0.25}
            most={12}
            onCommit={(width) => run(changeSashing({ width }))}
          />
          <FabricPicker
            label="Sashing fabric"
            value={sashing.fabric}
            onChange={(fabric) => run(changeSashing({ fabric }))}
          />
        </div>
      )}
      {borders.map((border, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: borders are told apart by their order only
        <div key={index} className="width-and-cloth">
          <LengthField
            label={say('Border {border}', { border: index + 1 })}
            value={border.width}
            least={0.25}
            most={30}
            onCommit={(width) => run(changeBorder(index, { width }))}
          />
          <FabricPicker
            label={say('Fabric of border {border}', { border: index + 1 })}
            value={border.fabric}
            onChange={(fabric) => run(changeBorder(index, { fabric }))}
          />
          <button
            type="button"
            className="button bare"
            aria-label={say('Remove border {border}', { border: index + 1 })}
            title={say('Remove border {border}', { border: index + 1 })}
            onClick={() => run(removeBorder(index))}
          >
            <X size={18} aria-hidden />
          </button>
        </div>
      ))}
      <div>
        <button
          type="button"
          className="button"
          disabled={borders.length >= 12}
          onClick={() => run(addBorder({ fabric: borders.at(-1)?.fabric ?? sashing.fabric, width: 3 }))}
        >
          <Plus size={16} aria-hidden /> {say('Add a border')}
        </button>
      </div>
    </section>
  );
}
