// A tooltip on a button: its name in full, on hover and on keyboard focus. Escape takes it away (WCAG 2.2, 1.4.13).
import {
  type ComponentProps,
  type ReactElement,
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { createPortal } from 'react-dom';
import { type Placement, placeBeside } from '../popup/placeBeside';
import { useEscape } from '../useEscape';

/** Milliseconds of hover before it shows; on keyboard focus, and soon after another, it shows at once. */
const DELAY = 400;
/** Milliseconds in which the pointer may go on to the hint itself, or to the next button. */
const LINGER = 120;
const SOON = 500;
/** Pixels between button and hint. */
const GAP = 6;

type ButtonProps = ComponentProps<'button'>;

interface Props {
  words: string;
  placement?: Placement;
  /** One button. */
  children: ReactElement<ButtonProps>;
}

/** When the last hint went, in milliseconds of the page. */
let lastGone = Number.NEGATIVE_INFINITY;

export function Hint({ words, placement = 'bottom', children }: Props) {
  const id = useId();
  const [on, setOn] = useState<HTMLElement | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const soon = (then: () => void, milliseconds: number) => {
    clearTimeout(timer.current);
    timer.current = setTimeout(then, milliseconds);
  };
  const show = (button: HTMLElement) => {
    clearTimeout(timer.current);
    setOn(button);
  };
  const hide = () => {
    clearTimeout(timer.current);
    if (on) lastGone = performance.now();
    setOn(null);
  };
  useEffect(() => () => clearTimeout(timer.current), []);
  const { props } = children;
  const button = (
    <button
      {...props}
      type={props.type ?? 'button'}
      aria-describedby={on ? id : props['aria-describedby']}
      onPointerEnter={(event) => {
        props.onPointerEnter?.(event);
        const { currentTarget, pointerType } = event;
        if (pointerType === 'touch' || event.buttons > 0) return;
        if (on || performance.now() - lastGone < SOON) show(currentTarget);
        else soon(() => setOn(currentTarget), DELAY);
      }}
      onPointerLeave={(event) => {
        props.onPointerLeave?.(event);
        if (on) soon(hide, LINGER);
        else clearTimeout(timer.current);
      }}
      onPointerDown={(event) => {
        props.onPointerDown?.(event);
        hide();
      }}
      onFocus={(event) => {
        props.onFocus?.(event);
        if (event.currentTarget.matches(':focus-visible')) show(event.currentTarget);
      }}
      onBlur={(event) => {
        props.onBlur?.(event);
        hide();
      }}
    />
  );
  return (
    <>
      {button}
      {on ? (
        <Words
          id={id}
          beside={on}
          placement={placement}
          onEnter={() => clearTimeout(timer.current)}
          onLeave={() => soon(hide, LINGER)}
          onClose={hide}
        >
          {words}
        </Words>
      ) : null}
    </>
  );
}

interface WordsProps {
  id: string;
  beside: HTMLElement;
  placement: Placement;
  onEnter: () => void;
  onLeave: () => void;
  onClose: () => void;
  children: string;
}

function Words({ id, beside, placement, onEnter, onLeave, onClose, children }: WordsProps) {
  const box = useRef<HTMLDivElement>(null);
  useEscape(onClose);
  // After every drawing: the words may have changed, and with them the size.
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const { width, height } = element.getBoundingClientRect();
    const screen = { width: document.documentElement.clientWidth, height: globalThis.innerHeight };
    const at = placeBeside(beside.getBoundingClientRect(), { width, height }, screen, placement, GAP);
    element.style.translate = `${at.x}px ${at.y}px`;
  });
  useEffect(() => {
    // What scrolls or changes size leaves the hint behind.
    const end = new AbortController();
    const options = { signal: end.signal, capture: true, passive: true };
    globalThis.addEventListener('scroll', onClose, options);
    globalThis.addEventListener('resize', onClose, options);
    return () => end.abort();
  });
  return createPortal(
    <div ref={box} id={id} role="tooltip" className="hint" onPointerEnter={onEnter} onPointerLeave={onLeave}>
      {children}
    </div>,
    document.body,
  );
}
