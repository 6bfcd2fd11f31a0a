// A row of buttons that is one stop for Tab; arrows, Home and End go on within it (WAI-ARIA Authoring Practices, toolbar pattern with a
// roving tabindex). The stop is the button used last.
import { type ComponentProps, type KeyboardEvent, useEffect, useRef } from 'react';
import { usable } from '../parts';

export function Toolbar(props: ComponentProps<'div'>) {
  const bar = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = bar.current;
    if (!element) return;
    const settle = () => setStop(element);
    // Buttons come and go with what they are about, and are hidden where there is no room.
    const changes = new MutationObserver((records) => {
      const stop = element.querySelector<HTMLButtonElement>('button[tabindex="0"]');
      const same = stop && !stop.disabled && records.every(({ type }) => type === 'attributes');
      if (!same) settle();
      // That others can be pressed, or no longer, moves no stop; to look which are to be seen would lay out the whole page.
      else for (const { target } of records) if (target !== stop) (target as HTMLElement).tabIndex = -1;
    });
    changes.observe(element, { childList: true, subtree: true, attributeFilter: ['disabled'] });
    const sizes = new ResizeObserver(settle);
    sizes.observe(element);
    return () => {
      changes.disconnect();
      sizes.disconnect();
    };
  }, []);
  return (
    <div
      {...props}
      ref={bar}
      role="toolbar"
      // What a button opens lies elsewhere in the page, but its events come by here.
      onFocus={({ target, currentTarget }) => {
        if (currentTarget.contains(target)) setStop(currentTarget, target);
      }}
      onKeyDown={goOn}
    />
  );
}

function buttonsOf(bar: HTMLElement): HTMLElement[] {
  return [...bar.querySelectorAll<HTMLElement>('button')].filter(usable);
}

/** Makes one button the stop: `wanted`, else the one that is, else the first. */
function setStop(bar: HTMLElement, wanted?: HTMLElement): void {
  const buttons = buttonsOf(bar);
  const stop = [wanted, buttons.find(({ tabIndex }) => tabIndex === 0)].find(
    (one) => one && buttons.includes(one),
  );
  for (const button of buttons) button.tabIndex = button === (stop ?? buttons[0]) ? 0 : -1;
}

function goOn(event: KeyboardEvent<HTMLElement>): void {
  const buttons = buttonsOf(event.currentTarget);
  const at = buttons.indexOf(event.target as HTMLElement);
  const to = at < 0 ? undefined : buttons[placeAfter(event.key, at, buttons.length)];
  if (!to) return;
  event.preventDefault();
  to.focus();
}

/** The place to which a key leads; none for other keys, and at the ends. */
function placeAfter(key: string, at: number, count: number): number {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return at + 1;
    case 'ArrowLeft':
    case 'ArrowUp':
      return at - 1;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return -1;
  }
}
