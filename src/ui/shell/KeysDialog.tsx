// The list of all keys, over the page.
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { KEY_PARTS } from '../keys';
import { useSay } from '../words';

interface Props {
  open: boolean;
  onOpen: (open: boolean) => void;
}

export function KeysDialog({ open, onOpen }: Props) {
  const say = useSay();
  return (
    <ModalOverlay className="veil" isDismissable isOpen={open} onOpenChange={onOpen}>
      <Modal className="popover keys-dialog">
        <Dialog style={{ outline: 'none' }}>
          {({ close }) => (
            <div className="stack">
              <div className="spread">
                <Heading slot="title" level={2}>
                  {say('Keys')}
                </Heading>
                <Button className="button" onPress={close}>
                  {say('Close')}
                </Button>
              </div>
              {KEY_PARTS.map(({ title, rows }) => (
                <section key={title} aria-label={say(title)}>
                  <h3>{say(title)}</h3>
                  <dl className="keys">
                    {Object.values(rows).map(({ shown, does }) => (
                      <div key={shown}>
                        <dt>{say(shown)}</dt>
                        <dd>{say(does)}</dd>
                      </div>
                    ))}
                  </dl>
                </section>
              ))}
            </div>
          )}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
