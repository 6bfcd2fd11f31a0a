// Where the wedges lie on a strip set, to scale: numbered in the order they are cut from the left, every cut a line as long as
// it is to be cut, waste hatched.
import { cutLines } from '../../../cutting/wedges/laying';
import { wedgeCuts } from '../../../cutting/wedges/yield';
import type { Point } from '../../../geometry/point';
import { setHeight, wedgeOnSet } from '../../../geometry/stripSet';
import type { StripSet, WedgePlan } from '../../../model/project';
import { WASTE_HATCH } from './WasteHatch';

export function CuttingDiagram({ set, wedge }: { set: StripSet; wedge: WedgePlan }) {
  const height = setHeight(set.strips, wedge.seam);
  const cuts = wedgeCuts(set, wedge).map((cut) => ({
    ...cut,
    outline: wedgeOnSet(cut.start, cut.tip, height, wedge),
  }));
  const outlines = cuts.map((cut) => path(cut.outline)).join('');
  const lines = cutLines(set, wedge)
    .map(({ from, to }) => `M${from.x} ${from.y}L${to.x} ${to.y}`)
    .join('');
  return (
    <g className="wdg-cuts">
      <path
        d={`M0 0H${set.length}V${height}H0Z${outlines}`}
        fillRule="evenodd"
        fill={`url(#${WASTE_HATCH})`}
      />
      <path d={lines} className="wdg-cut-edge" />
      <path d={lines} className="wdg-cut-heart" />
      {cuts.map((cut, index) => {
        const ends = cut.outline.map((point) => point.x);
        const middle = (Math.min(...ends) + Math.max(...ends)) / 2;
        // The number stands where the wedge is wide: about a third of its height from the base.
        const baseAt = cut.outline[0]!.y;
        const inward = cut.tip === 'up' ? -1 : 1;
        return (
          // On a set twice as high as the wedge two wedges start at one place, so the start is no unique key.
          // biome-ignore lint/suspicious/noArrayIndexKey: a wedge is known by its turn in the cutting
          <text key={index} x={middle} y={baseAt + inward * wedge.cutHeight * 0.3} dy="0.36em">
            {index + 1}
          </text>
        );
      })}
    </g>
  );
}

function path(outline: readonly Point[]): string {
  return `M${outline.map((point) => `${point.x} ${point.y}`).join('L')}Z`;
}
