// Use and Cancel under each layout or size to choose from.
import { useSay } from '../../words';

/** `use` names for screen readers what the first button uses. */
export function ChoiceButtons(props: { use: string; onUse: () => void; onCancel: () => void }) {
  const say = useSay();
  return (
    <div className="row">
      <button type="button" className="button solid" aria-label={props.use} onClick={props.onUse}>
        {say('Use')}
      </button>
      <button data-always type="button" className="button" onClick={props.onCancel}>
        {say('Cancel')}
      </button>
    </div>
  );
}
