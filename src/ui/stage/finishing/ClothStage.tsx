// The cloth of every fabric with the pieces as they lie on it, all at one scale, and the backing.

import type { FabricYardage } from '../../../cutting/yardage/fabricYardage';
import { sellingUnit } from '../../../model/buying';
import { useApp, useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { purchaseWords } from '../../steps/finishing/cloth/purchaseWords';
import { clothPlace } from '../../steps/finishing/cloth/showCloth';
import { useYardage } from '../../steps/finishing/cloth/useYardage';
import { useSay } from '../../words';
import { BackingPicture } from './BackingPicture';
import { ClothPicture, sheetsInUse } from './ClothPicture';
import { useBox } from './useBox';

/** No inch of cloth is drawn larger than this, pixels: a short length would fill the whole area. */
const MOST = 18;

export function ClothStage() {
  const say = useSay();
  const { project, list } = useYardage();
  const [frame, box] = useBox<HTMLDivElement>();
  const laid = list.fabrics.filter(({ layout }) => sheetsInUse(layout).length > 0);
  const widest = Math.max(
    1,
    ...laid.flatMap(({ layout }) => sheetsInUse(layout).map(({ sheet }) => sheet.across)),
  );
  const scale = Math.min(MOST, Math.max(0, box.width - CARD_EDGES) / widest);
  return (
    <div ref={frame} className="cloth-cards">
      {laid.length === 0 ? <p className="stage-note">{say('Nothing is left to cut.')}</p> : null}
      {scale <= 0 ? null : laid.map((one) => <ClothCard key={one.fabric.id} one={one} scale={scale} />)}
      {scale > 0 && list.backing ? (
        <BackingPicture
          layout={list.backing.layout}
          overhang={project.buying.backing.overhang}
          most={Math.max(80, box.width - CARD_EDGES)}
        />
      ) : null}
    </div>
  );
}

/** Pixels of a card left and right of its picture. */
const CARD_EDGES = 30;

function ClothCard({ one, scale }: { one: FabricYardage; scale: number }) {
  const say = useSay();
  const unit = useApp((app) => sellingUnit(app.project));
  const { light } = useAppStore().getState();
  const { fabric, layout, lines } = one;
  return (
    <figure
      id={clothPlace(fabric.id)}
      className="stage-card cloth-card"
      onPointerEnter={() => light(fabric.id)}
      onPointerLeave={() => light(null)}
    >
      <figcaption className="spread">
        <bdi>{fabric.name}</bdi>
        <span className="number">
          <Fractions text={say(purchaseWords(one.buy, unit))} />
        </span>
      </figcaption>
      <ClothPicture layout={layout} fabric={fabric} lines={lines} scale={scale} />
    </figure>
  );
}
