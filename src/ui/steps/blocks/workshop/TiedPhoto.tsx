// The photograph that goes with a pieced block, turned as the block is, to hold against what is drawn.
import { untiePhoto } from '../../../../editing/pictured/tieToBlock';
import type { PiecedBlock } from '../../../../model/project';
import { useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { usePicturesAtHand } from '../../../session';
import { useSay } from '../../../words';

interface Props {
  block: PiecedBlock;
  photo: NonNullable<PiecedBlock['photo']>;
}

export function TiedPhoto({ block, photo }: Props) {
  const say = useSay();
  const store = useAppStore();
  const [run, problems] = useRun();
  const href = usePicturesAtHand().hrefOf(photo.picture);
  return (
    <section aria-labelledby="tied-title">
      <h3 id="tied-title">{say('Photograph')}</h3>
      {href === null ? null : (
        <img
          className="tied-photo"
          src={href}
          alt={say('Block {block} as it was photographed', { block: block.number })}
          style={{ rotate: `${-90 * photo.turn}deg` }}
        />
      )}
      <div className="row">
        <button
          type="button"
          className="button"
          onClick={() => run(untiePhoto(store.getState().project, block.id))}
        >
          {say('Remove the photograph')}
        </button>
      </div>
      <Complaint problems={problems} />
    </section>
  );
}
