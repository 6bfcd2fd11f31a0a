// Advice on sewing and pressing strip sets; common practice, no source.
import { type Phrase, phrase } from '../../../model/phrase';
import { CENTIMETRES_PER_INCH, type LengthUnit } from '../../../model/units';
import { figureOf } from '../../../model/words/figure';
import { useSay, useUnit } from '../../words';
import { Caution } from '../Caution';

/** Stitches to the inch for seams that get cut across (common practice, no source). */
const STITCHES = { least: 10, most: 12 } as const;
const MILLIMETRES_PER_INCH = 10 * CENTIMETRES_PER_INCH;

const LINES = [
  'Press all seams of a set one way; the arrows show which. Up and down wedges then nest.',
  'If a set bows, sew the strips from opposite ends in turn, as the arrows at the ends show.',
] as const;

export function SewingAids() {
  const say = useSay();
  const unit = useUnit();
  return (
    <section aria-label={say('At the machine')}>
      <h3>{say('At the machine')}</h3>
      <ul className="set-aids">
        <li>{say(stitchLength(unit))}</li>
        {LINES.map((line) => (
          <li key={line}>{say(line)}</li>
        ))}
      </ul>
      <Caution about={['sewing', 'pressing']} />
    </section>
  );
}

/** The stitch length in words: stitches to the inch with inches, millimetres with centimetres. */
function stitchLength(unit: LengthUnit): Phrase {
  if (unit === 'in')
    return phrase('Sew with {least} to {most} stitches to the inch: the seams get cut across.', STITCHES);
  const long = (toTheInch: number) => figureOf(MILLIMETRES_PER_INCH / toTheInch, 1);
  return phrase('Sew with a stitch {least} to {most} mm long: the seams get cut across.', {
    least: long(STITCHES.most),
    most: long(STITCHES.least),
  });
}
