// What was read of the fabric in hand: its main colours with their shares, mean, value, how busy it is, how its print repeats.
import { hsl } from 'd3-color';
import { scaleLinear } from 'd3-scale';
import { colourName } from '../../../../cloth/standIns';
import type { Phrase } from '../../../../model/phrase';
import { phrase } from '../../../../model/phrase';
import type { FabricFound } from '../../../../store/photo/photoJobs';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';

export function ReadingPart({ found }: { found: FabricFound }) {
  const say = useSay();
  return (
    <section className="photo-reading" aria-label={say('What was read')}>
      <ColourBar found={found} />
      <ul className="photo-colours">
        {found.colours.map(({ hex, share }) => (
          <li key={hex}>
            <span style={{ background: hex }} aria-hidden />
            {say('{share}% {colour}', { share: Math.round(100 * share), colour: colourName(hex) })}
          </li>
        ))}
      </ul>
      <dl>
        <dt>{say('Mean colour')}</dt>
        <dd>
          <span className="photo-mean" style={{ background: found.mean }} aria-hidden />
          {say(colourName(found.mean))}
        </dd>
        <dt>{say('Value')}</dt>
        <dd>{say('{value} of 100', { value: Math.round(found.value) })}</dd>
        <dt>{say('How busy')}</dt>
        <dd>{say(busyWords(found.spread))}</dd>
        <dt>{say('Print repeats')}</dt>
        <dd>
          <Fractions text={say(repeatWords(found))} />
        </dd>
      </dl>
    </section>
  );
}

/** A bar as long as each share; ticks at quarters. A line in black or white parts neighbours of one lightness. */
function ColourBar({ found }: { found: FabricFound }) {
  const along = scaleLinear([0, 1], [0, 400]);
  const starts = found.colours.map((_, at) =>
    found.colours.slice(0, at).reduce((sum, { share }) => sum + share, 0),
  );
  return (
    <svg className="photo-bar" viewBox="0 0 400 34" preserveAspectRatio="none" aria-hidden>
      {found.colours.map(({ hex, share }, at) => (
        <g key={hex}>
          <rect x={along(starts[at]!)} width={along(share)} height={26} fill={hex} />
          <line
            x1={along(starts[at]!)}
            x2={along(starts[at]!)}
            y2={26}
            stroke={hsl(hex).l > 0.5 ? '#000' : '#fff'}
            strokeWidth={at === 0 ? 0 : 1}
          />
        </g>
      ))}
      {along.ticks(4).map((tick) => (
        <line key={tick} className="tick" x1={along(tick)} x2={along(tick)} y1={28} y2={34} />
      ))}
    </svg>
  );
}

/** Standard deviations of value below which a fabric is calm or lively; above, busy (common practice, no source). */
const CALM = 6;
const LIVELY = 14;

function busyWords(spread: number): Phrase {
  const values = { spread: Math.round(spread) };
  if (spread < CALM) return phrase('calm (spread of value {spread})', values);
  return phrase(
    spread < LIVELY ? 'lively (spread of value {spread})' : 'busy (spread of value {spread})',
    values,
  );
}

function repeatWords({ scale, tileSize, figures }: FabricFound): Phrase {
  if (scale !== null) return phrase('every {scale}', { scale: { inches: scale } });
  if (figures === 'plain' || tileSize) return phrase('no repeat seen');
  return phrase('known once the true size is');
}
