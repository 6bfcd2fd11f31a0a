// A strip set for a sewn wedge whose set is not on record: its fabrics from the rim inwards, as wide as they show.
import { Minus, Plus } from 'lucide-react';
import { useState } from 'react';
import { addSewnSet, type ShownBand } from '../../../editing/entering/sewnSets';
import { apothem } from '../../../geometry/wedge';
import { freshLetter } from '../../../model/find';
import { phrase } from '../../../model/phrase';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { FabricPicker } from '../../fields/FabricPicker';
import { LengthField } from '../../fields/LengthField';
import { useSay } from '../../words';

const NARROWEST = 1 / 8;
const USUAL = 1;

export function SewnSet() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [bands, setBands] = useState<readonly (Omit<ShownBand, 'fabric'> & { fabric: string | null })[]>([
    { fabric: null, width: USUAL },
  ]);
  const [run, problems, clear] = useRun();
  const change = (at: number, part: Partial<ShownBand>) => {
    clear();
    setBands(bands.with(at, { ...bands[at]!, ...part }));
  };
  const chosen = bands.flatMap(({ fabric, width }) => (fabric === null ? [] : [{ fabric, width }]));
  const letter = freshLetter(project);
  const add = () => {
    if (!run(addSewnSet(chosen))) return;
    setBands([{ fabric: null, width: USUAL }]);
    store.getState().announce(phrase('It is set {set}.', { set: letter }));
  };
  return (
    <section aria-labelledby="unknown-title">
      <h3 id="unknown-title">{say('A wedge of a set that is not here')}</h3>
      <div className="stack">
        <p>
          {say(
            'Name its fabrics from the rim inwards, and how wide each shows; the last one takes what is left. It becomes set {set}, tip up, and its count is corrected as you enter it.',
            { set: letter },
          )}
        </p>
        <ol className="sewn-bands">
          {bands.map((band, at) => {
            const last = at === bands.length - 1;
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a band is its place from the rim
              <li key={at}>
                <FabricPicker
                  label={at === 0 ? 'On the rim' : 'Then'}
                  value={band.fabric}
                  onChange={(fabric) => change(at, { fabric })}
                />
                {last ? null : (
                  <LengthField
                    label="Shows"
                    value={band.width}
                    least={NARROWEST}
                    most={apothem(project.wedge)}
                    onCommit={(width) => {
                      change(at, { width });
                      return [];
                    }}
                  />
                )}
              </li>
            );
          })}
        </ol>
        <div className="row">
          <button
            type="button"
            className="button"
            onClick={() => setBands([...bands, { fabric: null, width: USUAL }])}
          >
            <Plus size={16} aria-hidden /> {say('Another fabric')}
          </button>
          {bands.length > 1 ? (
            <button type="button" className="button" onClick={() => setBands(bands.slice(0, -1))}>
              <Minus size={16} aria-hidden /> {say('One fewer')}
            </button>
          ) : null}
          <button
            type="button"
            className="button"
            data-once
            disabled={chosen.length < bands.length}
            onClick={add}
          >
            {say('Add set {set}', { set: letter })}
          </button>
        </div>
        <Complaint problems={problems} />
      </div>
    </section>
  );
}
