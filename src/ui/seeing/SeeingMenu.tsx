// What is chosen of how the wall is seen: the way of seeing, a fabric that stays lit, a photograph of the real wall beside it. Loaded when it
// is asked for.
import { ImagePlus, X } from 'lucide-react';
import { useId, useRef, useState } from 'react';
import { squintBlur, WAYS, type Way } from '../../colour/seen';
import type { Problem } from '../../model/result';
import { useApp, useAppStore } from '../app';
import { Complaint } from '../fields/Complaint';
import { FabricPicker } from '../fields/FabricPicker';
import { Fractions } from '../fields/Fractions';
import { LengthField } from '../fields/LengthField';
import { useSay } from '../words';
import { readPhoto } from './photoFile';
import { useTones } from './SeeingFilter';
import { ToneLegend } from './ToneLegend';
import { distanceOf, seeAs, WAY_WORDS } from './ways';

/** Inches from which a wall can be looked at: an arm's length to the end of a hall. */
const NEAREST = 12;
const FARTHEST = 1200;

export function SeeingMenu() {
  return (
    <>
      <Ways />
      <LitFabric />
      <Photo />
    </>
  );
}

function Ways() {
  const say = useSay();
  const store = useAppStore();
  const chosen = useApp((app) => app.look.way);
  const name = useId();
  return (
    <fieldset>
      <legend className="hidden-text">{say('Way of seeing')}</legend>
      {WAYS.map((way) => (
        <div key={way}>
          <label className="check">
            <input
              type="radio"
              name={name}
              checked={way === chosen}
              onChange={() => seeAs(store.getState(), way)}
            />
            <span>
              {say(WAY_WORDS[way].name)} <span className="quiet">{say(WAY_WORDS[way].line)}</span>
            </span>
          </label>
          {way === chosen ? <More way={way} /> : null}
        </div>
      ))}
    </fieldset>
  );
}

/** What can be set for a way of seeing, or what it shows. */
function More({ way }: { way: Way }) {
  switch (way) {
    case 'colour':
    case 'grey':
      return null;
    case 'tones':
      return <Tones />;
    case 'squint':
      return <Distance />;
    case 'protan':
    case 'deutan':
    case 'tritan':
      return <Severity />;
    default:
      return way satisfies never;
  }
}

function Tones() {
  const tones = useTones();
  return tones ? (
    <div className="more">
      <ToneLegend tones={tones} />
    </div>
  ) : null;
}

function Distance() {
  const say = useSay();
  const store = useAppStore();
  const distance = useApp(distanceOf);
  // The least detail that is told apart is twice the deviation of the blur.
  const least = 2 * squintBlur(distance);
  return (
    <div className="more">
      <LengthField
        label="Viewing distance"
        value={distance}
        least={NEAREST}
        most={FARTHEST}
        onCommit={(to) => {
          store.getState().lookAt({ distance: to });
          return [];
        }}
      />
      <p className="quiet">
        <Fractions
          text={say('Details smaller than {size} melt into each other.', { size: { inches: least } })}
        />
      </p>
    </div>
  );
}

function Severity() {
  const say = useSay();
  const store = useAppStore();
  const severity = useApp((app) => app.look.severity);
  return (
    <label className="field more">
      <span className="label">{say('How weak: {value} of 100', { value: Math.round(severity * 100) })}</span>
      <input
        type="range"
        min={0}
        max={100}
        step={5}
        value={Math.round(severity * 100)}
        style={{ accentColor: 'var(--solid)', padding: 0 }}
        onChange={(event) => store.getState().lookAt({ severity: Number(event.target.value) / 100 })}
      />
    </label>
  );
}

function LitFabric() {
  const say = useSay();
  const store = useAppStore();
  const held = useApp((app) => app.heldLit);
  const any = useApp((app) => app.project.fabrics.length > 0);
  if (!any) return null;
  return (
    <>
      <FabricPicker
        label="One fabric lit, the others dimmed"
        value={held}
        onChange={(fabric) => store.getState().holdLit(fabric)}
      />
      {held === null ? null : (
        <button type="button" className="button" onClick={() => store.getState().holdLit(null)}>
          {say('Show all fabrics again')}
        </button>
      )}
    </>
  );
}

function Photo() {
  const say = useSay();
  const store = useAppStore();
  const photo = useApp((app) => app.look.photo);
  const file = useRef<HTMLInputElement>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const show = async (chosen: File) => {
    const read = await readPhoto(chosen);
    setProblems(read.ok ? [] : read.problems);
    if (read.ok) store.getState().lookAt({ photo: read.value });
  };
  return (
    <div className="stack">
      <div className="row">
        <button type="button" className="button" onClick={() => file.current?.click()}>
          <ImagePlus size={16} aria-hidden />{' '}
          {say(photo ? 'Another photograph' : 'Photograph beside the wall')}
        </button>
        {photo ? (
          <button type="button" className="button" onClick={() => store.getState().lookAt({ photo: null })}>
            <X size={16} aria-hidden /> {say('Remove it')}
          </button>
        ) : null}
      </div>
      <input
        ref={file}
        type="file"
        accept="image/*"
        hidden
        aria-label={say('Photograph of the wall')}
        onChange={(event) => {
          const [chosen] = event.target.files ?? [];
          event.target.value = '';
          if (chosen) void show(chosen);
        }}
      />
      <p className="quiet">{say('It stays on this screen: it is not saved and not sent.')}</p>
      <Complaint problems={problems} />
    </div>
  );
}
