// What light, medium and dark are in this quilt: their greys and the values between which they lie.
import { TONE_GREYS, TONES, type Tone, type ToneLimits } from '../../colour/tone';
import type { QuiltTones } from '../../drawing/fabricTones';
import { type Phrase, phrase } from '../../model/phrase';
import { useSay } from '../words';

export function ToneLegend({ tones: { limits, of } }: { tones: QuiltTones }) {
  const say = useSay();
  return (
    <>
      <ul className="tone-legend">
        {TONES.toReversed().map((tone) => (
          <li key={tone}>
            <svg width="12" height="12" aria-hidden>
              <rect width="12" height="12" fill={TONE_GREYS[tone]} />
            </svg>
            {say(toneWords(tone, limits))}
          </li>
        ))}
      </ul>
      <p className="quiet">{say(THIRDS_OF[of])}</p>
    </>
  );
}

const THIRDS_OF: Readonly<Record<QuiltTones['of'], string>> = {
  top: 'Thirds of this top by area: the same fabric can be dark in one quilt and medium in another.',
  onHand: 'Thirds of what is on hand, by area. Once blocks hang, thirds of the top.',
  list: 'Thirds of the list, each fabric counted once. Once blocks hang, thirds of the top.',
};

function toneWords(tone: Tone, { medium, light }: ToneLimits): Phrase {
  switch (tone) {
    case 'dark':
      return medium === -Infinity
        ? phrase('dark: none')
        : phrase('dark: value below {to}', { to: Math.round(medium) });
    case 'medium':
      return medium === light ? phrase('medium: none') : phrase('medium: between');
    case 'light':
      return light === Infinity
        ? phrase('light: none')
        : phrase('light: value from {from}', { from: Math.round(light) });
    default:
      return tone satisfies never;
  }
}
