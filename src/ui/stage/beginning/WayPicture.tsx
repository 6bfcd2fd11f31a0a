// The small pictures of the ways to begin, drawn with the outlines the quilt itself is drawn with, in fabrics that stand in.
import type { ReactNode } from 'react';
import { standIns } from '../../../cloth/standIns';
import { outlinePath } from '../../../drawing/number';
import { bandOutline, cornerOutlines } from '../../../geometry/block';
import { apothem, finishedBlock } from '../../../geometry/wedge';
import type { WedgePlan } from '../../../model/project';
import type { WayToBegin } from '../../../store/drafts';

const CLOTHS = standIns(9).map(({ colour }) => colour);
const GROUND = '#efe9dc';
const WEDGE: WedgePlan = { perBlock: 8, cutHeight: 7.5, seam: 0.25, assemblySeam: 0.25, outerSeam: 0.25 };
const BLOCK = finishedBlock(WEDGE).width;
const cloth = (at: number) => CLOTHS[((at % CLOTHS.length) + CLOTHS.length) % CLOTHS.length]!;

export function WayPicture({ way }: { way: WayToBegin }) {
  return (
    <svg className="way-picture" viewBox="0 0 120 80" aria-hidden>
      {PICTURES[way]}
    </svg>
  );
}

const PICTURES: Readonly<Record<WayToBegin, ReactNode>> = {
  strips: <Strips />,
  fabric: <Fabric />,
  sewn: <Octagons />,
  size: <Measured />,
  roll: <Roll />,
  example: <Framed />,
};

/** Strips laid side by side, some longer. */
function Strips() {
  const widths = [5, 8, 11, 5, 8, 5, 11, 8];
  let y = 5;
  return widths.map((width, at) => {
    const top = y;
    y += width + 1.5;
    return (
      <rect
        key={top}
        x={10 + ((at * 7) % 9)}
        y={top}
        width={92 - ((at * 5) % 13)}
        height={width}
        fill={cloth(2 * at)}
      />
    );
  });
}

/** Folded fabrics in a pile, the uppermost one open. */
function Fabric() {
  return [0, 1, 2, 3, 4].map((at) => (
    <path
      key={at}
      d={`M${20 - at} ${66 - at * 12} h${74 + at} q6 5 0 10 h-${74 + at} q-6 -5 0 -10`}
      fill={cloth(2 * at + 1)}
      stroke="rgb(0 0 0 / 0.3)"
      strokeWidth={0.5}
    />
  ));
}

/** A block: wedges of four bands, tip up and tip down in turn, and its corners. */
function Block({ seed, corners = true }: { seed: number; corners?: boolean }) {
  const rim = apothem(WEDGE);
  const radii = [rim, 0.74 * rim, 0.55 * rim, 0.3 * rim, 0];
  return (
    <>
      {corners
        ? cornerOutlines(WEDGE).map((outline) => (
            <path key={outlinePath(outline)} d={outlinePath(outline)} fill={GROUND} />
          ))
        : null}
      {Array.from({ length: 8 }, (_, toward) =>
        [0, 1, 2, 3].map((band) => {
          const d = outlinePath(bandOutline(toward, radii[band]!, radii[band + 1]!, 8));
          const fabric = toward % 2 === 0 ? seed + band * 2 + toward : seed + 7 - band * 2 + toward;
          return <path key={d} d={d} fill={cloth(fabric)} />;
        }),
      )}
    </>
  );
}

function Octagons() {
  return [0, 1].map((at) => (
    <g key={at} transform={`translate(${34 + at * 52} 40) rotate(${at * 8 - 4}) scale(${48 / BLOCK})`}>
      <Block seed={at * 3} corners={false} />
    </g>
  ));
}

function Top({
  rows,
  columns,
  size,
  x,
  y,
}: {
  rows: number;
  columns: number;
  size: number;
  x: number;
  y: number;
}) {
  return Array.from({ length: rows * columns }, (_, at) => {
    const [column, row] = [at % columns, Math.floor(at / columns)];
    return (
      <g
        key={`${row} ${column}`}
        transform={`translate(${x + (column + 0.5) * size} ${y + (row + 0.5) * size}) scale(${size / BLOCK})`}
      >
        <Block seed={at * 2} />
      </g>
    );
  });
}

/** A top with a tape along two of its sides. */
function Measured() {
  return (
    <g>
      <Top rows={2} columns={3} size={27} x={28} y={18} />
      <g fill="none" stroke="currentColor" strokeWidth={1}>
        <path d="M28 11 h81 M28 8 v6 M109 8 v6 M55 9.5 v3 M82 9.5 v3" />
        <path d="M21 18 v54 M18 18 h6 M18 72 h6 M19.5 45 h3" />
      </g>
    </g>
  );
}

const RINGS = [35, 32.3, 29.6, 26.9, 24.2, 21.5, 18.8, 16.1, 13.4, 10.7, 8, 5.3] as const;

/** Strips rolled up, seen from the side: rings of fabric. */
function Roll() {
  return (
    <g>
      {RINGS.map((radius, at) => (
        <circle
          key={radius}
          cx={60}
          cy={40}
          r={radius}
          fill={cloth(at * 2)}
          stroke="rgb(0 0 0 / 0.25)"
          strokeWidth={0.4}
        />
      ))}
      <path d="M60 75 h44 v-4 h-36 z" fill={cloth(0)} stroke="rgb(0 0 0 / 0.25)" strokeWidth={0.4} />
    </g>
  );
}

/** A whole top with its border. */
function Framed() {
  return (
    <g>
      <rect x={21} y={5} width={78} height={70} fill={cloth(7)} />
      <rect x={26} y={10} width={68} height={60} fill={cloth(3)} />
      <rect x={28} y={12} width={64} height={56} fill={GROUND} />
      <Top rows={2} columns={2} size={28} x={32} y={12} />
    </g>
  );
}
