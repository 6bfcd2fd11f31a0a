// One band of a block that is shown by its picture: which fabric it is said to be, and where that is not known or doubtful, a new fabric
// of the very strip.
import { putBandRight } from '../../../../editing/pictured/putRight';
import type { FabricId, PicturedBlock, ShownBand } from '../../../../model/project';
import { isDoubtful } from '../../../../store/photo/corrected';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { useSession } from '../../../session';
import { FabricOfStrip, useFabricOfStrip } from '../../../stage/photo/FabricOfStrip';
import { useSay } from '../../../words';

interface Props {
  block: PicturedBlock;
  place: number;
  at: number;
  band: ShownBand;
}

export function ShownBandField({ block, place, at, band }: Props) {
  const say = useSay();
  const store = useAppStore();
  const session = useSession();
  const wedge = useApp((app) => app.project.wedge);
  const [run, problems] = useRun();
  const tell = (fabric: FabricId) => run(putBandRight(store.getState().project, block.id, place, at, fabric));
  const picture = session.pictures.state.getState().pictures.get(block.picture);
  const strip = useFabricOfStrip(async () => {
    if (!picture) return null;
    const { readStrip, stripInPicture } = await import('../../../../store/photo/fabricOfStrip');
    return await readStrip(picture, stripInPicture(block, picture, wedge, place, at), wedge);
  }, tell);
  const name = say(at === 0 ? 'Place {place}, rim' : 'Place {place}, strip {strip}', {
    place: place + 1,
    strip: at + 1,
  });
  return (
    <div className="shown-band">
      <FabricPicker label={name} value={band.fabric} onChange={tell} />
      {picture && band.width > 0 && (band.fabric === null || isDoubtful(band)) ? (
        <FabricOfStrip making={strip} strip={name} />
      ) : null}
      <Complaint problems={strip.problems.length > 0 ? strip.problems : problems} />
    </div>
  );
}
