// The whole screen: selvedge, panel of the current step, wall, and strip of values.
import { type CSSProperties, useEffect, useMemo, useRef, useState } from 'react';
import { formatHex } from '../colour/parse';
import { encodedOf, luminanceOfValue } from '../colour/spaces';
import { everyCloth } from '../model/colourway';
import { useApp, useAppStore } from './app';
import { heedRefusedFields } from './fields/refusedFields';
import { heedSecondPress } from './fields/secondPress';
import { ErrorScreen } from './shell/ErrorScreen';
import { Selvedge } from './shell/Selvedge';
import { SkipLinks } from './shell/SkipLinks';
import { TopBar } from './shell/TopBar';
import { ValueStrip } from './shell/ValueStrip';
import { BlockWork } from './stage/blocks/BlockWork';
import { Stage } from './stage/Stage';
import { StepPanel } from './steps/StepPanel';
import { ClothDefs } from './wall/ClothDefs';
import { useSay } from './words';

/** Milliseconds after which a part that moves the focus itself has done so. */
const FOCUS_SETTLES = 250;

export function App() {
  const say = useSay();
  const store = useAppStore();
  const fabrics = useApp((app) => app.project.fabrics);
  const colourways = useApp((app) => app.project.colourways);
  const cloth = useMemo(() => everyCloth({ fabrics, colourways }), [fabrics, colourways]);
  const perBlock = useApp((app) => app.project.wedge.perBlock);
  const lightness = useApp((app) => app.project.preferences.wallLightness);
  const announced = useApp((app) => app.announced);
  const [number, setNumber] = useState(false);
  const panel = useRef<HTMLElement>(null);
  const step = useApp((app) => app.step);
  const id = useApp((app) => app.project.id);
  const revision = useApp((app) => app.revision);
  const seen = useRef(revision);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another step or quilt starts at its heading
  useEffect(() => {
    panel.current?.scrollTo(0, 0);
  }, [step, id]);
  useEffect(() => {
    // When a button disappears after its press, the focus goes to the step's heading, unless the part that changed has moved
    // it by then. Before the first change the focus stays at the start of the page, with the skip links.
    if (seen.current === revision) return;
    seen.current = revision;
    const timer = setTimeout(() => {
      if (document.activeElement === document.body)
        panel.current?.querySelector('h2')?.focus({ preventScroll: true });
    }, FOCUS_SETTLES);
    return () => clearTimeout(timer);
  }, [revision]);
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if ((event.target as Element).matches('input:not([type=range]):not([type=radio]), textarea')) return;
      const pressed = event.key.toLowerCase();
      if (pressed === 'z' && !event.shiftKey) store.getState().undo();
      else if (pressed === 'y' || (pressed === 'z' && event.shiftKey)) store.getState().redo();
      else return;
      event.preventDefault();
    };
    globalThis.addEventListener('keydown', key);
    return () => globalThis.removeEventListener('keydown', key);
  }, [store]);
  return (
    <div className="room" style={flannel(lightness)}>
      <SkipLinks />
      <ClothDefs fabrics={cloth} perBlock={perBlock} />
      <TopBar number={number} onNumber={setNumber} />
      <Selvedge />
      <BlockWork>
        <main
          className="panel"
          id="step"
          ref={panel}
          onClickCapture={(event) => {
            heedSecondPress(event);
            if (!event.isPropagationStopped()) heedRefusedFields(event);
          }}
        >
          <ErrorScreen>
            <StepPanel />
          </ErrorScreen>
        </main>
        <Stage number={number} />
      </BlockWork>
      <ValueStrip />
      <p className="hidden-text" role="status" aria-live="polite">
        {say(announced.words)}
      </p>
    </div>
  );
}

/** A neutral grey of the wanted L*, and ink that reads on it. */
function flannel(lightness: number): CSSProperties {
  const light = luminanceOfValue(lightness);
  const grey = formatHex(encodedOf([light, light, light]));
  return { '--flannel': grey, '--on-flannel': lightness > 55 ? '#161616' : '#f4f4f4' } as CSSProperties;
}
