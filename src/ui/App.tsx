// The whole screen: selvedge, panel of the current step, wall, and strip of values.
import { useDeferredValue, useEffect, useMemo, useRef, useState } from 'react';
import { clothShown } from '../model/colourway';
import type { Step } from '../store/app';
import { useApp, useAppStore } from './app';
import { heedRefusedFields } from './fields/refusedFields';
import { heedBusy, heedSecondPress } from './fields/secondPress';
import { isKey } from './keys';
import { goOn } from './parts';
import { Shown } from './Shown';
import { HELP, type Help } from './shell/help/help';
import { PrintSheet } from './shell/PrintSheet';
import { Selvedge } from './shell/Selvedge';
import { SkipLinks } from './shell/SkipLinks';
import { TopBar } from './shell/TopBar';
import { ValueStrip } from './shell/ValueStrip';
import { BlockWork } from './stage/blocks/BlockWork';
import { FoldButton, useFolded } from './stage/FoldButton';
import { Stage } from './stage/Stage';
import { StepPanel } from './steps/StepPanel';
import { closeLast } from './useEscape';
import { ClothDefs } from './wall/ClothDefs';
import { flannel } from './wall/early/flannel';
import { useSay } from './words';

export function App() {
  const say = useSay();
  const store = useAppStore();
  const fabrics = useApp((app) => app.project.fabrics);
  const colourways = useApp((app) => app.project.colourways);
  const opened = useApp((app) => app.laid.colourway);
  const cloth = useDeferredValue(
    useMemo(() => clothShown({ fabrics, colourways }, opened), [fabrics, colourways, opened]),
  );
  const perBlock = useApp((app) => app.project.wedge.perBlock);
  const lightness = useApp((app) => app.project.preferences.wallLightness);
  const way = useApp((app) => app.look.way);
  const announced = useApp((app) => app.announced);
  const lastChange = useApp((app) => app.lastChange);
  const [number, setNumber] = useState(false);
  const panel = useRef<HTMLElement>(null);
  const step = useApp((app) => app.step);
  const id = useApp((app) => app.project.id);
  // Once asked for it stays there, closed, so that the focus goes back to where it was.
  const [help, setHelp] = useState<{ which: Help; open: boolean } | null>(null);
  const full = useApp((app) => app.wallFull);
  const { folded } = useFolded();
  const before = useRef({ step, id });
  useEffect(() => {
    // Another step or quilt starts at its heading.
    if (before.current.step === step && before.current.id === id) return;
    before.current = { step, id };
    if (panel.current) showStart(panel.current);
  }, [step, id]);
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (event.defaultPrevented) return;
      const redoes = isKey(event, 'redo') || (isKey(event, 'undo') && event.shiftKey);
      if (redoes || isKey(event, 'undo')) {
        if (isTypedInto(event.target)) return;
        if (redoes) store.getState().redo();
        else store.getState().undo();
      } else if (isKey(event, 'nextPart')) goOn(document, event.shiftKey ? -1 : 1);
      else if (isKey(event, 'listKeys') && !takesText(event.target)) setHelp({ which: 'keys', open: true });
      else if (!isKey(event, 'close') || !closeLast()) return;
      event.preventDefault();
    };
    globalThis.addEventListener('keydown', key);
    return () => globalThis.removeEventListener('keydown', key);
  }, [store]);
  return (
    <div
      className={roomClass(full, folded, step)}
      style={flannel(lightness)}
      data-way={way === 'colour' ? undefined : way}
    >
      <SkipLinks />
      <ClothDefs fabrics={cloth} perBlock={perBlock} />
      <TopBar number={number} onNumber={setNumber} onHelp={(which) => setHelp({ which, open: true })} />
      <Selvedge />
      <BlockWork>
        <main
          className="panel"
          id="step"
          ref={panel}
          onClickCapture={(event) => {
            heedBusy(event);
            if (!event.isPropagationStopped()) heedSecondPress(event);
            if (!event.isPropagationStopped()) heedRefusedFields(event);
          }}
        >
          <StepPanel />
        </main>
        <Stage number={number} />
      </BlockWork>
      <div className="strip-row">
        <ValueStrip />
        <FoldButton />
      </div>
      <PrintSheet />
      {help ? (
        <Shown
          key={help.which}
          part={HELP[help.which]}
          given={{ open: help.open, onClose: () => setHelp({ ...help, open: false }) }}
          over
        />
      ) : null}
      {/* Only the sentence that is new is read out; one that is said again is new too. */}
      <div className="hidden-text" role="status" aria-live="polite" aria-atomic="false">
        <p key={announced.count}>{announced.heard ? say(announced.words) : ''}</p>
        <p>{say(lastChange)}</p>
      </div>
    </div>
  );
}

/** The layout: the wall fills the screen, at its own step with the foot of the step; or the large area is folded away. */
function roomClass(full: boolean, folded: boolean, step: Step): string {
  if (full) return step === 'wall' ? 'room wall-full with-action' : 'room wall-full';
  return folded ? 'room folded' : 'room';
}

/** Scrolls the panel to its start; and where the page scrolls as a whole, the page, if that start is far out of sight. */
function showStart(panel: HTMLElement): void {
  panel.scrollTo(0, 0);
  const { top } = panel.getBoundingClientRect();
  if (top < 0 || top > globalThis.innerHeight / 2)
    panel.scrollIntoView({ block: 'start', behavior: 'instant' });
}

/** Whether an element takes letters, so that a key there is no command. */
function takesText(target: EventTarget | null): target is HTMLInputElement | HTMLTextAreaElement {
  return (
    target instanceof HTMLTextAreaElement ||
    (target instanceof HTMLInputElement && !['range', 'radio', 'checkbox', 'color'].includes(target.type))
  );
}

/**
 * Whether a field holds what is typed and not taken yet: then Ctrl Z takes back letters. Once it is taken it is a change of the
 * quilt, and Ctrl Z takes that back, so that the field and the quilt never say different things.
 */
function isTypedInto(target: EventTarget | null): boolean {
  return takesText(target) && target.value !== target.dataset.shown;
}
