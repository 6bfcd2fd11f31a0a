// Use and Cancel under each layout or size to choose from.
import { Apart } from '../../fields/Apart';
import { useSay } from '../../words';

/** `of` tells screen readers what the buttons are about. */
export function ChoiceButtons(props: { of: string; onUse: () => void; onCancel: () => void }) {
  const say = useSay();
  return (
    <div className="row">
      <button type="button" className="button solid" onClick={props.onUse}>
        {say('Use')}
        <Apart of={props.of} />
      </button>
      <button data-always type="button" className="button" onClick={props.onCancel}>
        {say('Cancel')}
        <Apart of={props.of} />
      </button>
    </div>
  );
}
