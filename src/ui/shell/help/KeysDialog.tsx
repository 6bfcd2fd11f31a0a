// The list of all keys, over the page.
import { KEY_PARTS } from '../../keys';
import { useSay } from '../../words';
import { HelpDialog } from './HelpDialog';

export function KeysDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  const say = useSay();
  return (
    <HelpDialog title="Keys" open={open} onClose={onClose}>
      {KEY_PARTS.map(({ title, rows }) => (
        <section key={title} aria-label={say(title)}>
          <h3>{say(title)}</h3>
          <dl className="help-list">
            {Object.values(rows).map(({ shown, does }) => (
              <div key={shown}>
                <dt>{say(shown)}</dt>
                <dd>{say(does)}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </HelpDialog>
  );
}
