// Borders from the inside out: width and fabric of each, its corners, and piecing it from leftover strips.
import { Plus, X } from 'lucide-react';
import { useState } from 'react';
import { evenBorder, setBorderCorners } from '../../../../editing/commands/edges';
import { addBorder, changeBorder, removeBorder } from '../../../../editing/commands/setting';
import { USUAL } from '../../../../model/lengths';
import type { Border } from '../../../../model/project';
import { USUAL_MITRE_SPARE } from '../../../../model/setting';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { Fractions } from '../../../fields/Fractions';
import { LengthField } from '../../../fields/LengthField';
import { useSay, useUnit } from '../../../words';
import { Fold } from './Fold';
import { PiecedPart } from './PiecedPart';

export function BordersPart() {
  const say = useSay();
  const unit = useUnit();
  const store = useAppStore();
  const { borders } = useApp((app) => app.project.setting);
  const run = store.getState().run;
  // Index of the border whose piecing is open; a spacer inside it raises the index by one.
  const [piecing, setPiecing] = useState<number | null>(null);
  const now =
    borders.length === 0
      ? say('none')
      : borders.length === 1
        ? say('one, {width} wide', { width: { inches: borders[0]!.width } })
        : say('{count}, from the inside out', { count: borders.length });
  return (
    <Fold title="Borders" now={now}>
      {borders.map((border, index) => (
        <OneBorder
          // biome-ignore lint/suspicious/noArrayIndexKey: borders are told apart by their order only
          key={index}
          border={border}
          index={index}
          piecing={piecing === index}
          onPiece={setPiecing}
        />
      ))}
      <div>
        <button
          type="button"
          className="button"
          disabled={borders.length >= 12}
          onClick={() => run(addBorder({ width: USUAL[unit].border }))}
        >
          <Plus size={16} aria-hidden /> {say(borders.length === 0 ? 'Add a border' : 'Add a border outside')}
        </button>
      </div>
    </Fold>
  );
}

type Corners = 'butted' | 'mitred' | 'cornerstones';

interface OneBorderProps {
  border: Border;
  index: number;
  /** Whether the piecing of this border is open. */
  piecing: boolean;
  onPiece: (index: number | null) => void;
}

function OneBorder({ border, index, piecing, onPiece }: OneBorderProps) {
  const say = useSay();
  const store = useAppStore();
  const cornerFabric = useApp((app) => app.project.setting.cornerFabric);
  const [run, problems] = useRun();
  // In inches the file needs no word of it (model/setting).
  const { mitreSpare } = USUAL[useUnit()];
  const spare = mitreSpare === USUAL_MITRE_SPARE ? {} : { spare: mitreSpare };
  const corners: Corners = border.corners?.kind ?? 'butted';
  const choose = (next: Corners) => {
    if (next === 'butted') return run(setBorderCorners(index, null));
    if (next === 'mitred') return run(setBorderCorners(index, { kind: 'mitred', ...spare }));
    return run(setBorderCorners(index, { kind: 'cornerstones', fabric: cornerFabric }));
  };
  return (
    <fieldset className="border-part stack">
      <legend className="hidden-text">{say('Border {border}', { border: index + 1 })}</legend>
      <div className="width-and-cloth">
        <LengthField
          label={say('Border {border}', { border: index + 1 })}
          value={border.width}
          least={0.25}
          most={30}
          onCommit={(width) => store.getState().run(changeBorder(index, { width }), 'here')}
        />
        <FabricPicker
          label={border.keys ? 'Fabric if plain' : 'Fabric'}
          value={border.fabric}
          onChange={(fabric) => run(changeBorder(index, { fabric }))}
        />
        <button
          type="button"
          className="button bare"
          aria-label={say('Remove border {border}', { border: index + 1 })}
          title={say('Remove border {border}', { border: index + 1 })}
          onClick={() => {
            onPiece(null);
            run(removeBorder(index));
          }}
        >
          <X size={18} aria-hidden />
        </button>
      </div>
      {border.ends === undefined ? null : (
        <p className="row">
          <Fractions text={say('{end} at top and bottom.', { end: { inches: border.ends } })} />
          <button type="button" className="button" onClick={() => run(evenBorder(index))}>
            {say('Same all round')}
          </button>
        </p>
      )}
      <Choice
        label="Its corners"
        value={corners}
        options={[
          { value: 'butted', label: 'Butted' },
          ...(border.keys ? [] : [{ value: 'mitred' as const, label: 'Mitred' }]),
          { value: 'cornerstones', label: 'Cornerstones' },
        ]}
        onChange={choose}
      />
      {border.corners?.kind === 'mitred' ? (
        <LengthField
          label="Extra at each end for the mitre"
          value={border.corners.spare ?? USUAL_MITRE_SPARE}
          most={12}
          onCommit={(spare) =>
            store.getState().run(setBorderCorners(index, { kind: 'mitred', spare }), 'here')
          }
        />
      ) : null}
      {border.corners?.kind === 'cornerstones' ? (
        <FabricPicker
          label="Fabric of its cornerstones"
          value={border.corners.fabric}
          onChange={(fabric) => run(setBorderCorners(index, { kind: 'cornerstones', fabric }))}
        />
      ) : null}
      <PiecedPart
        border={border}
        index={index}
        open={piecing}
        onOpen={(open) => onPiece(open ? index : null)}
        onSpacer={() => onPiece(index + 1)}
      />
      <Complaint problems={problems} />
    </fieldset>
  );
}
