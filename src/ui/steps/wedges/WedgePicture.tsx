// The wedge template to scale, tip up, with its three measures: base, height, trimmed tip.
import { outlinePoints } from '../../../drawing/number';
import { wedgeOnSet } from '../../../geometry/stripSet';
import { cutWedge } from '../../../geometry/wedge';
import type { WedgePlan } from '../../../model/project';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';

/** Screen pixels of the picture's longer side. */
const SIZE = 150;

export function WedgePicture({ wedge }: { wedge: WedgePlan }) {
  const say = useSay();
  const { base, tip } = cutWedge(wedge);
  const scale = SIZE / Math.max(base, wedge.cutHeight);
  const outline = wedgeOnSet(0, 'up', wedge.cutHeight, wedge);
  const seamed = outlinePoints(outline);
  const values = {
    base: { inches: base },
    height: { inches: wedge.cutHeight },
    tip: { inches: tip },
  };
  return (
    <figure className="wdg-picture">
      <span className="wdg-measure">
        <Fractions text={say('tip {tip}', values)} />
      </span>
      <div className="wdg-middle">
        <svg
          width={base * scale}
          height={wedge.cutHeight * scale}
          viewBox={`0 0 ${base} ${wedge.cutHeight}`}
          role="img"
          aria-label={say('The wedge: base {base}, height {height}, tip {tip}', values)}
        >
          <polygon points={seamed} />
          <path d={`M${base / 2} 0V${wedge.cutHeight}`} className="wdg-middle-line" />
        </svg>
        <span className="wdg-measure">
          <Fractions text={say('{height} high', values)} />
        </span>
      </div>
      <span className="wdg-measure">
        <Fractions text={say('base {base}', values)} />
      </span>
    </figure>
  );
}
