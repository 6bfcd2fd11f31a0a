// Where the wedges lie on a strip set, to scale: numbered in the order they are cut from the left with the sign of their tip, every
// cut a line as long as it is to be cut, waste and what is lost hatched, and on a wedge that is used the number of its block.
import { cutLines } from '../../../cutting/wedges/laying';
import type { CutInUse } from '../../../cutting/wedges/uses';
import type { Point } from '../../../geometry/point';
import { setHeight, wedgeOnSet } from '../../../geometry/stripSet';
import type { StripSet, WedgePlan } from '../../../model/project';
import { WASTE_HATCH } from './WasteHatch';

type LaidCut = CutInUse & { readonly outline: readonly Point[] };

interface Props {
  set: StripSet;
  wedge: WedgePlan;
  cuts: readonly CutInUse[];
}

export function CuttingDiagram({ set, wedge, cuts }: Props) {
  const height = setHeight(set.strips, wedge.seam);
  const laid = cuts.map((cut) => ({ ...cut, outline: wedgeOnSet(cut.start, cut.tip, height, wedge) }));
  const outlines = laid.map((cut) => (cut.lost ? '' : path(cut.outline))).join('');
  const used = laid.map((cut) => (cut.use ? path(cut.outline) : '')).join('');
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
      <path d={used} className="wdg-used" />
      <path d={lines} className="wdg-cut-edge" />
      <path d={lines} className="wdg-cut-heart" />
      {laid.map((cut, index) => (
        // On a set twice as high as the wedge two wedges start at one place, so the start is no unique key.
        // biome-ignore lint/suspicious/noArrayIndexKey: a wedge is known by its turn in the cutting
        <WedgeSigns key={index} number={index + 1} cut={cut} wedge={wedge} />
      ))}
    </g>
  );
}

/** The number in the order of cutting with the sign of the tip, and in an octagon the block that uses the wedge. */
function WedgeSigns({ number, cut, wedge }: { number: number; cut: LaidCut; wedge: WedgePlan }) {
  const ends = cut.outline.map((point) => point.x);
  const middle = (Math.min(...ends) + Math.max(...ends)) / 2;
  // They stand where the wedge is wide: up to about half of its height from the base.
  const inward = cut.tip === 'up' ? -1 : 1;
  const at = (part: number) => cut.outline[0]!.y + inward * wedge.cutHeight * part;
  return (
    <>
      <g transform={`translate(${middle} ${at(0.14)})`}>
        <text className="wdg-number" x={-0.12} dy="0.36em" textAnchor="end">
          {number}
        </text>
        <path
          className="wdg-cut-tip"
          d={cut.tip === 'up' ? 'M0.05 0.4H0.85L0.57 -0.42H0.33Z' : 'M0.05 -0.42H0.85L0.57 0.4H0.33Z'}
        />
      </g>
      {cut.use ? (
        <g transform={`translate(${middle} ${at(0.38)})`}>
          <polygon className="wdg-block-sign" points={OCTAGON} />
          <text className="wdg-block" dy="0.36em">
            {cut.use.number}
          </text>
        </g>
      ) : null}
    </>
  );
}

const OCTAGON = Array.from({ length: 8 }, (_, corner) => {
  const turn = ((corner + 0.5) * Math.PI) / 4;
  return `${0.78 * Math.cos(turn)},${0.78 * Math.sin(turn)}`;
}).join(' ');

function path(outline: readonly Point[]): string {
  return `M${outline.map((point) => `${point.x} ${point.y}`).join('L')}Z`;
}
