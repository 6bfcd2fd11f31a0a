// What lies round a block on the wall, drawn in its place and fading outwards, so that its edges can be judged against what they meet.
import { memo, useMemo } from 'react';
import type { Mark } from '../../../balance/finding';
import { mergedPaths } from '../../../drawing/blockPaths';
import { drawProject } from '../../../drawing/drawProject';
import type { BlockId, Project } from '../../../model/project';
import { BlockView } from '../../wall/BlockView';
import { SeamMarks } from '../../wall/marks/Marks';
import type { Margins } from './BlockFace';

interface Props {
  project: Project;
  block: BlockId;
  /** So many inches of the surroundings are shown on every side. */
  margin: number;
}

/** The surroundings in the block's own inches; nothing for a block on the side table. */
export const Neighbours = memo(function Neighbours({ project, block, margin }: Props) {
  const drawing = useMemo(() => drawProject(project), [project]);
  const own = drawing.blocks.find((one) => one.block === block);
  const { width, height } = drawing.block;
  // On point a neighbour's middle lies nearer in x and y than straight, so the reach is taken from the diagonal.
  const reach = Math.hypot(width, height) + margin * 1.5;
  const setting = useMemo(() => {
    if (!own) return [];
    const near = drawing.setting.filter(({ outline }) => {
      const xs = outline.map(({ x }) => x - own.centre.x);
      const ys = outline.map(({ y }) => y - own.centre.y);
      return (
        Math.min(...xs) < reach &&
        Math.max(...xs) > -reach &&
        Math.min(...ys) < reach &&
        Math.max(...ys) > -reach
      );
    });
    return mergedPaths(near, project.fabrics);
  }, [drawing, own, reach, project.fabrics]);
  if (!own) return null;
  const { x, y } = own.centre;
  const others = drawing.blocks.filter(
    (one) => one !== own && Math.hypot(one.centre.x - x, one.centre.y - y) < reach,
  );
  return (
    <g aria-hidden>
      <g transform={`rotate(${-own.tilt}) translate(${-x} ${-y})`}>
        {setting.map(({ fabric, fill, d }) => (
          <path key={`${fabric} ${fill}`} d={d} fill={fill || 'none'} />
        ))}
        {others.map((one) => (
          <g
            key={one.block}
            transform={`translate(${one.centre.x} ${one.centre.y}) rotate(${one.quarters * 90 + one.tilt})`}
          >
            <BlockView pieces={one.pieces} fabrics={project.fabrics} lit={null} near />
          </g>
        ))}
      </g>
      <Fade width={width} height={height} margin={margin} />
      <g transform={`rotate(${-own.tilt}) translate(${-x} ${-y})`}>
        {others.map((one) => {
          const at = clamped(one.centre.x - x, one.centre.y - y, -own.tilt, width, height, margin);
          return at === null ? null : (
            <text
              key={one.block}
              className="neighbour-number"
              transform={`translate(${x} ${y}) rotate(${own.tilt}) translate(${at.x} ${at.y})`}
              y={0.45}
              fontSize={1.3}
              strokeWidth={0.3}
            >
              {one.number}
            </text>
          );
        })}
      </g>
    </g>
  );
});

/** How much of the surroundings there is to see: where the top ends nothing is shown. On point every side has something. */
export function marginsRound(project: Project, block: BlockId, most: number): Margins {
  const drawing = drawProject(project);
  const own = drawing.blocks.find((one) => one.block === block);
  const none = 0.1;
  if (own?.tilt !== 0) return { left: most, right: most, top: most, foot: most };
  const { x, y } = own.centre;
  const [half, tall] = [drawing.block.width / 2, drawing.block.height / 2];
  const shown = (room: number) => Math.min(most, Math.max(none, room));
  return {
    left: shown(x - half),
    right: shown(drawing.width - x - half),
    top: shown(y - tall),
    foot: shown(drawing.height - y - tall),
  };
}

/** Marks of clashes between the block and what it meets, which are in quilt inches. */
export const OutsideMarks = memo(function OutsideMarks(props: {
  project: Project;
  block: BlockId;
  marks: readonly Mark[];
}) {
  const { project, block, marks } = props;
  const own = useMemo(() => drawProject(project).blocks.find((one) => one.block === block), [project, block]);
  if (!own || marks.length === 0) return null;
  return (
    <g transform={`rotate(${-own.tilt}) translate(${-own.centre.x} ${-own.centre.y})`}>
      <SeamMarks marks={marks} strong={false} />
    </g>
  );
});

/** Where the number of a neighbour stands: inside the margin towards it; null for one that touches only at a corner. */
function clamped(dx: number, dy: number, degrees: number, width: number, height: number, margin: number) {
  const angle = (degrees * Math.PI) / 180;
  const x = dx * Math.cos(angle) - dy * Math.sin(angle);
  const y = dx * Math.sin(angle) + dy * Math.cos(angle);
  const beside = Math.abs(y) < height / 4;
  const above = Math.abs(x) < width / 4;
  if (beside === above) return null;
  const inset = margin * 0.55;
  return beside
    ? { x: Math.sign(x) * (width / 2 + inset), y: 0 }
    : { x: 0, y: Math.sign(y) * (height / 2 + inset) };
}

/** The flannel over the surroundings, from nothing at the block's edge to all of it at the outside. */
function Fade({ width, height, margin }: { width: number; height: number; margin: number }) {
  const [right, foot] = [width / 2, height / 2];
  const across = { x: -right - margin, width: width + 2 * margin };
  const down = { y: -foot - margin, height: height + 2 * margin };
  return (
    <>
      <defs>
        {(['left', 'right', 'top', 'foot'] as const).map((side) => (
          <linearGradient
            key={side}
            id={`fade-${side}`}
            x1={side === 'left' ? 1 : 0}
            x2={side === 'right' ? 1 : 0}
            y1={side === 'top' ? 1 : 0}
            y2={side === 'foot' ? 1 : 0}
          >
            <stop offset="0.25" stopColor="var(--flannel)" stopOpacity={0} />
            <stop offset="1" stopColor="var(--flannel)" stopOpacity={1} />
          </linearGradient>
        ))}
      </defs>
      <rect {...down} x={-right - margin} width={margin} fill="url(#fade-left)" />
      <rect {...down} x={right} width={margin} fill="url(#fade-right)" />
      <rect {...across} y={-foot - margin} height={margin} fill="url(#fade-top)" />
      <rect {...across} y={foot} height={margin} fill="url(#fade-foot)" />
    </>
  );
}
