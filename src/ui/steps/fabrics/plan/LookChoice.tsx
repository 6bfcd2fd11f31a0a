// The choice of proportions of narrow, middle and wide strips, the usual ones or one's own.
import { useMemo, useState } from 'react';
import { usualWidths } from '../../../../cutting/plan/planStrips';
import type { WidthPart } from '../../../../cutting/plan/setTotals';
import { Choice } from '../../../fields/Choice';
import { CountField } from '../../../fields/CountField';
import { LengthField } from '../../../fields/LengthField';
import { useSay, useUnit } from '../../../words';

type Named = 'usual' | 'even' | 'narrow';

export interface Look {
  readonly name: Named | 'own';
  readonly widths: readonly WidthPart[];
}

/** Proportions of narrow, middle and wide strips; 2 : 2 : 1 is usual (common practice, no source). */
const PARTS: Readonly<Record<Named, readonly number[]>> = {
  usual: [2, 2, 1],
  even: [1, 1, 1],
  narrow: [4, 2, 1],
};
const NAMES = ['Narrow', 'Middle', 'Wide'] as const;
const MOST_PARTS = 9;

/** The look a plan begins with, usual in the person's unit, and a function that chooses another. */
export function useLook(): [Look, (look: Look) => void] {
  const unit = useUnit();
  const [chosen, choose] = useState<Look | null>(null);
  const usual = useMemo((): Look => ({ name: 'usual', widths: usualWidths(unit) }), [unit]);
  return [chosen ?? usual, choose];
}

/** The widths for a plan: those with a part above 0. */
export function wantedWidths(look: Look): readonly WidthPart[] {
  return look.widths.filter((one) => one.part > 0);
}

interface Props {
  look: Look;
  onChange: (look: Look) => void;
}

export function LookChoice({ look, onChange }: Props) {
  const say = useSay();
  const unit = useUnit();
  const choose = (name: Look['name']) => {
    if (name === 'own') onChange({ name, widths: look.widths });
    else
      onChange({
        name,
        widths: usualWidths(unit).map(({ width }, at) => ({ width, part: PARTS[name][at]! })),
      });
  };
  const change = (at: number, to: Partial<WidthPart>) => {
    onChange({
      name: 'own',
      widths: look.widths.map((one, index) => (index === at ? { ...one, ...to } : one)),
    });
    return [];
  };
  return (
    <div className="stack onhand-kind onhand-parts">
      <Choice
        label="Narrow : middle : wide"
        value={look.name}
        options={[
          { value: 'usual', label: '2 : 2 : 1' },
          { value: 'even', label: '1 : 1 : 1' },
          { value: 'narrow', label: '4 : 2 : 1' },
          { value: 'own', label: 'own' },
        ]}
        onChange={choose}
      />
      {look.name === 'own'
        ? look.widths.map((one, at) => (
            <fieldset key={NAMES[at]} className="onhand-look">
              <legend className="hidden-text">{say(NAMES[at]!)}</legend>
              <LengthField
                label={NAMES[at]!}
                value={one.width}
                least={0.5}
                most={12}
                onCommit={(width) => change(at, { width })}
              />
              <CountField
                label="Parts"
                of={say(NAMES[at]!)}
                value={one.part}
                least={0}
                most={MOST_PARTS}
                onCommit={(part) => change(at, { part })}
              />
            </fieldset>
          ))
        : null}
    </div>
  );
}
