// Asks for several good layouts that differ. They lie on the large area (stage/wall) until one is used or they are put away.
import { counted } from '../../../model/phrase';
import { Complaint } from '../../fields/Complaint';
import { useSeeking } from '../../session';
import { useSay } from '../../words';

export function AlternativesPart({ disabled }: { disabled: boolean }) {
  const say = useSay();
  const { state, start } = useSeeking();
  return (
    <div className="alternatives">
      <div role="status">
        {state.kind === 'offered' && state.alternatives.length > 0 ? (
          <p>
            {say(
              counted(
                state.alternatives.length,
                'One layout lies on the large area.',
                '{count} layouts lie on the large area, each with Use and Cancel.',
              ),
            )}
          </p>
        ) : null}
      </div>
      {state.kind === 'idle' ? (
        <>
          <button type="button" className="button" disabled={disabled} onClick={start}>
            {say('Show several to choose from')}
          </button>
          <Complaint problems={state.problems} />
        </>
      ) : null}
    </div>
  );
}
