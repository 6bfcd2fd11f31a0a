// The fields of a print: motif, colours, size of the repeat, angle, and the number of the random draw.
import { Dices, Plus, X } from 'lucide-react';
import { useId } from 'react';
import { PRINT_MOTIFS, type Print } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { DrawField } from '../../fields/DrawField';
import { LengthField } from '../../fields/LengthField';
import { useSay } from '../../words';
import { ClothSample, type NewFabric } from './ClothSample';
import { ColourField } from './ColourField';
import { MOTIF_NAMES } from './motifNames';

interface Props {
  fabric: NewFabric;
  print: Print;
  onLive: (print: Print | null) => void;
  onCommit: (print: Print) => readonly Problem[];
}

const MOST_INKS = 4;
const MOST_SEED = 10_000;
const TURNS = [0, 45, 90, -45] as const;

export function PrintFields({ fabric, print, onLive, onCommit }: Props) {
  const say = useSay();
  const to = (part: Partial<Print>) => onCommit({ ...print, ...part });
  return (
    <div className="stack">
      <MotifChoice fabric={fabric} print={print} onCommit={(motif) => to({ motif })} />
      <div className="fab-inks">
        {print.inks.map((ink, index) => {
          const inked = (hex: string) => print.inks.map((one, at) => (at === index ? hex : one));
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a colour is known by its place in the print
            <div key={index} className="fab-ink">
              <ColourField
                label={index === 0 ? 'Printed with' : say('Print colour {number}', { number: index + 1 })}
                value={ink}
                onLive={(hex) => onLive(hex === null ? null : { ...print, inks: inked(hex) })}
                onCommit={(hex) => to({ inks: inked(hex) })}
              />
              {print.inks.length > 1 ? (
                <button
                  type="button"
                  className="button bare"
                  aria-label={say('Remove print colour {number}', { number: index + 1 })}
                  onClick={() => to({ inks: print.inks.filter((_, at) => at !== index) })}
                >
                  <X size={16} aria-hidden />
                </button>
              ) : null}
            </div>
          );
        })}
        {print.inks.length < MOST_INKS ? (
          <button
            type="button"
            className="button fab-more-ink"
            onClick={() => to({ inks: [...print.inks, print.inks.at(-1) ?? '#333333'] })}
          >
            <Plus size={16} aria-hidden /> {say('Add a colour')}
          </button>
        ) : null}
      </div>
      <div className="fab-pair">
        <LengthField
          label="Repeat"
          value={print.repeat}
          least={0.125}
          most={12}
          onCommit={(repeat) => to({ repeat })}
        />
        <TurnChoice angle={print.angle} onCommit={(angle) => to({ angle })} />
      </div>
      <DrawField
        label="Print number"
        value={print.seed}
        most={MOST_SEED}
        same="The same number arranges the print in the same way."
        onChange={(seed) => to({ seed })}
      >
        <button
          type="button"
          className="button"
          onClick={() => to({ seed: (print.seed + 1) % (MOST_SEED + 1) })}
        >
          <Dices size={16} aria-hidden /> {say('Rearrange the print')}
        </button>
      </DrawField>
    </div>
  );
}

function MotifChoice({
  fabric,
  print,
  onCommit,
}: Pick<Props, 'fabric' | 'print'> & { onCommit: (motif: Print['motif']) => void }) {
  const say = useSay();
  const name = useId();
  return (
    <fieldset className="fab-motifs">
      <legend className="quiet">{say('Print: {motif}', { motif: say(MOTIF_NAMES[print.motif]) })}</legend>
      {PRINT_MOTIFS.map((motif) => (
        <label key={motif} title={say(MOTIF_NAMES[motif])}>
          <input
            type="radio"
            name={name}
            checked={motif === print.motif}
            onChange={() => onCommit(motif)}
            aria-label={say(MOTIF_NAMES[motif])}
          />
          <ClothSample
            fabric={{ ...fabric, cloth: { kind: 'print', print: { ...print, motif } } }}
            pixelsPerInch={26}
          />
        </label>
      ))}
    </fieldset>
  );
}

function TurnChoice({ angle, onCommit }: { angle: number; onCommit: (angle: number) => void }) {
  const say = useSay();
  const id = useId();
  const known = (TURNS as readonly number[]).includes(angle) ? TURNS : [...TURNS, angle];
  return (
    <div className="field">
      <label htmlFor={id}>{say('Turned')}</label>
      <select id={id} value={angle} onChange={(event) => onCommit(Number(event.target.value))}>
        {known.map((one) => (
          <option key={one} value={one}>
            {one === 0 ? say('along the strip') : say('{degrees}°', { degrees: one })}
          </option>
        ))}
      </select>
    </div>
  );
}
