// The light: what is white or grey in the photograph is tapped, or the tool's proposal taken; before and after side by side.

import { type Phrase, phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { castOf } from '../../../../photo/light/light';
import { NEUTRALS, type Neutral, type Patch, type PhotoAtWork } from '../../../../store/photo/patches';
import { Choice } from '../../../fields/Choice';
import { Complaint } from '../../../fields/Complaint';
import { useSay } from '../../../words';
import { useSitting, useSittingState } from './sitting';

/** Differences in exposure below this are not spoken of, stops. */
const EVEN = 0.1;

const NAMES: Readonly<Record<Neutral, string>> = { white: 'White', card: 'Grey card', grey: 'Another grey' };

interface Props {
  photo: PhotoAtWork;
  patch: Patch;
  problems: readonly Problem[];
  onProblems: (problems: readonly Problem[]) => void;
}

export function LightPart({ photo, patch, problems, onProblems }: Props) {
  const say = useSay();
  const sitting = useSitting();
  const several = useSittingState(({ photos }) => photos.length > 1);
  const shared = useSittingState((state) => state.shared);
  const of = photo.file.key;
  const { white } = photo.opened;
  const take = async (at: NonNullable<PhotoAtWork['light']>['at'], neutral: Neutral) => {
    if (at) onProblems(await sitting.takeLight(of, at, neutral));
  };
  return (
    <div className="stack">
      <p className="quiet">
        {say(
          'Tap something in the photograph that is white or grey in truth: paper, a grey card, white fabric. The cast of the light is then taken out.',
        )}
      </p>
      <Choice
        label="What you tap is"
        value={photo.neutral}
        options={NEUTRALS.map((value) => ({ value, label: NAMES[value] }))}
        onChange={(neutral) => {
          sitting.edit(of, () => ({ neutral }));
          void take(photo.light?.at ?? null, neutral);
        }}
      />
      <div className="row">
        {white ? (
          <button type="button" className="button" onClick={() => void take(white.frame, photo.neutral)}>
            {say('Use the marked spot ({sure}% sure)', { sure: Math.round(100 * white.sure) })}
          </button>
        ) : (
          <p className="quiet">
            {say('No white spot was found here; tap one, or leave the light as it is.')}
          </p>
        )}
        {photo.light ? (
          <button
            type="button"
            className="button"
            onClick={() => {
              onProblems([]);
              sitting.edit(of, () => ({ light: null }));
            }}
          >
            {say('Leave the light uncorrected')}
          </button>
        ) : null}
        {photo.light ? <ShareLight of={of} several={several} shared={shared === photo.light.light} /> : null}
      </div>
      <Complaint problems={problems} />
      <p role="status">{say(castWords(photo))}</p>
      {patch.read ? (
        <div className="photo-before">
          <figure>
            <img src={patch.read.hrefs.before} alt={say('The fabric as photographed')} />
            <figcaption>{say('Before')}</figcaption>
          </figure>
          <figure>
            <img src={patch.read.hrefs.after} alt={say('The fabric with the light corrected')} />
            <figcaption>{say('After')}</figcaption>
          </figure>
        </div>
      ) : null}
    </div>
  );
}

function ShareLight({ of, several, shared }: { of: number; several: boolean; shared: boolean }) {
  const say = useSay();
  const sitting = useSitting();
  return (
    <label className="check">
      <input type="checkbox" checked={shared} onChange={() => sitting.shareLight(shared ? null : of)} />
      <span>
        {say(several ? 'Use this light for all photographs' : 'Use this light for the next photographs too')}
      </span>
    </label>
  );
}

function castWords({ light }: PhotoAtWork): Phrase {
  if (!light) return phrase('The light is not corrected.');
  const { kelvin, stops } = castOf(light.light);
  const was = kelvin === null ? phrase('coloured light') : phrase('light of about {kelvin} K', { kelvin: Math.round(kelvin / 100) * 100 }); // biome-ignore format: one choice
  if (Math.abs(stops) < EVEN) return phrase('Corrected for {light}.', { light: was });
  return phrase(stops < 0 ? 'Corrected for {light}, and made lighter.' : 'Corrected for {light}, and made darker.', { light: was }); // biome-ignore format: one choice
}
