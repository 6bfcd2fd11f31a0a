// The choice of the PNG's width in pixels, and its size on paper.

import { useState } from 'react';
import { phrase } from '../../../model/phrase';
import { CENTIMETRES_PER_INCH, type LengthUnit } from '../../../model/units';
import { PRINT_DENSITY, pixelSize, viewSize, widestPicture } from '../../../store/picture/picture';
import { Complaint } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { TextField } from '../../fields/TextField';
import { useSay, useUnit } from '../../words';

const PRINTED: Readonly<Record<LengthUnit, string>> = {
  in: '{width} × {height} pixels: {across} × {down} printed at {density} dots to the inch.',
  cm: '{width} × {height} pixels: {across} × {down} printed at {metric} dots to the centimetre ({density} dpi).',
};

interface Props {
  svg: string;
  width: number;
  onChange: (width: number) => void;
}

export function PictureSize({ svg, width, onChange }: Props) {
  const say = useSay();
  const unit = useUnit();
  // Number of usual sizes taken so far: each one clears the text typed in the field before.
  const [offered, setOffered] = useState(0);
  const size = pixelSize(svg, width);
  const full = Math.round(viewSize(svg).width * PRINT_DENSITY);
  const offers = [
    { name: 'Email size', pixels: 1200 },
    { name: 'A page', pixels: 2400 },
    { name: 'Large', pixels: 7200 },
    {
      name: full <= widestPicture(svg) ? 'True size' : 'The largest',
      pixels: Math.min(full, widestPicture(svg)),
    },
  ];
  return (
    <div className="stack tight">
      <fieldset className="picture-sizes" aria-label={say('Usual sizes')}>
        {offers.map(({ name, pixels }) => (
          <button
            key={name}
            type="button"
            className="button"
            aria-pressed={pixels === width}
            onClick={() => {
              onChange(pixels);
              setOffered(offered + 1);
            }}
          >
            {say(name)}
          </button>
        ))}
      </fieldset>
      <TextField
        key={offered}
        label="Width of the PNG in pixels"
        value={String(width)}
        longest={6}
        onCommit={(text) => {
          if (!/^\d+$/.test(text)) {
            const message = phrase('Write a whole number of pixels.');
            return [{ code: 'not-a-number', path: 'picture', message }];
          }
          const asked = pixelSize(svg, Number(text));
          if (!asked.ok) return asked.problems;
          onChange(Number(text));
          return [];
        }}
      />
      {size.ok ? (
        <p>
          <Fractions
            text={say(PRINTED[unit], {
              width: size.value.width,
              height: size.value.height,
              across: { inches: size.value.width / PRINT_DENSITY },
              down: { inches: size.value.height / PRINT_DENSITY },
              density: PRINT_DENSITY,
              metric: Math.round(PRINT_DENSITY / CENTIMETRES_PER_INCH),
            })}
          />
        </p>
      ) : (
        <Complaint problems={size.problems} />
      )}
    </div>
  );
}
