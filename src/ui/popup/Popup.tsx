// What a button opens, beside it and over the page. It is loaded when a PopupButton is pressed or pointed at.
import type { ReactNode } from 'react';
import { Dialog, Popover } from 'react-aria-components';
import type { PopupProps } from './PopupButton';

interface Props extends PopupProps {
  placement: 'bottom start' | 'bottom end';
  children: ReactNode;
}

export function Popup({ button, name, placement, onClose, children }: Props) {
  return (
    <Popover
      className="popover"
      placement={placement}
      triggerRef={{ current: button }}
      isOpen
      onOpenChange={(open) => {
        if (!open) onClose();
      }}
    >
      <Dialog aria-label={name} style={{ outline: 'none' }}>
        {children}
      </Dialog>
    </Popover>
  );
}
