// What can be looked up, over the page: a heading, Close, and a list. Escape closes it, and the focus goes back to where it was.
import type { ReactNode } from 'react';
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { useSay } from '../../words';

interface Props {
  title: string;
  open: boolean;
  onClose: () => void;
  children: ReactNode;
}

export function HelpDialog({ title, open, onClose, children }: Props) {
  const say = useSay();
  return (
    <ModalOverlay
      className="veil"
      isDismissable
      isOpen={open}
      onOpenChange={(now) => {
        if (!now) onClose();
      }}
    >
      <Modal className="popover help-dialog">
        <Dialog style={{ outline: 'none' }}>
          {({ close }) => (
            <div className="stack">
              <div className="spread">
                <Heading slot="title" level={2}>
                  {say(title)}
                </Heading>
                <Button className="button" onPress={close}>
                  {say('Close')}
                </Button>
              </div>
              {children}
            </div>
          )}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
