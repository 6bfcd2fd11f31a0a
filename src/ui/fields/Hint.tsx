// A tooltip on a button: its name in full, on hover and on keyboard focus. Escape takes it away (WCAG 2.2, 1.4.13).
import type { ReactElement } from 'react';
import { Focusable, Tooltip, TooltipTrigger } from 'react-aria-components';

/** Milliseconds of hover before it shows; on keyboard focus it shows at once. */
const DELAY = 400;

interface Props {
  words: string;
  placement?: 'bottom' | 'top';
  /** One button: a <button>, or a Button of react-aria-components. */
  children: ReactElement<Record<string, unknown>>;
}

export function Hint({ words, placement = 'bottom', children }: Props) {
  return (
    <TooltipTrigger delay={DELAY} closeDelay={0}>
      {typeof children.type === 'string' ? (
        <Focusable>{children as ReactElement<Record<string, unknown>, string>}</Focusable>
      ) : (
        children
      )}
      <Tooltip className="hint" placement={placement} offset={6}>
        {words}
      </Tooltip>
    </TooltipTrigger>
  );
}
