// A small picture of a whole top.
import { memo, useMemo } from 'react';
import { mergedPaths } from '../../drawing/blockPaths';
import type { Drawing } from '../../drawing/drawing';
import { drawProject } from '../../drawing/drawProject';
import type { BlockId, Project } from '../../model/project';
import { BlockView } from './BlockView';
import { Ring } from './HungBlockView';

interface Props {
  project: Project;
  label: string;
  /** Whether it is large enough to see seams and directions of prints. */
  near?: boolean;
  /** Blocks with a ring. */
  ringed?: ReadonlySet<BlockId>;
  /** Cells with a ring, empty or not. */
  ringedCells?: ReadonlySet<number>;
}

export const SmallTop = memo(function SmallTop({ project, label, near = false, ringed, ringedCells }: Props) {
  const drawing = useMemo(() => drawProject(project), [project]);
  const paths = mergedPaths(drawing.setting, project.fabrics);
  return (
    <svg
      className="small-top"
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      role="img"
      aria-label={label}
    >
      {drawing.emptyCells.map(({ cell, box }) => (
        <rect
          key={cell}
          {...box}
          transform={`rotate(${drawing.tilt} ${box.x + box.width / 2} ${box.y + box.height / 2})`}
          fill="#c8c6c2"
          stroke="#5f5b55"
          strokeWidth={0.3}
        />
      ))}
      <g className="seen">
        {paths.map(({ fabric, fill, d }) => (
          <path key={`${fabric} ${fill}`} d={d} fill={fill || 'none'} />
        ))}
        {drawing.blocks.map((hung) => (
          <g
            key={hung.block}
            transform={`translate(${hung.centre.x} ${hung.centre.y}) rotate(${hung.quarters * 90 + drawing.tilt})`}
          >
            <BlockView pieces={hung.pieces} fabrics={project.fabrics} lit={null} near={near} />
          </g>
        ))}
      </g>
      {ringsOf(drawing, ringed, ringedCells).map(({ cell, centre }) => (
        <g key={`ring ${cell}`} transform={`translate(${centre.x} ${centre.y}) rotate(${drawing.tilt})`}>
          <Ring
            width={drawing.block.width - 0.6}
            height={drawing.block.height - 0.6}
            className="stitch-solid"
          />
        </g>
      ))}
    </svg>
  );
});

/** The cells to ring, by their blocks or by themselves, with their middles. */
function ringsOf(drawing: Drawing, blocks?: ReadonlySet<BlockId>, cells?: ReadonlySet<number>) {
  const hung = drawing.blocks.filter((one) => blocks?.has(one.block) || cells?.has(one.cell));
  const empty = drawing.emptyCells.filter((one) => cells?.has(one.cell));
  return [
    ...hung.map(({ cell, centre }) => ({ cell, centre })),
    ...empty.map(({ cell, box }) => ({
      cell,
      centre: { x: box.x + box.width / 2, y: box.y + box.height / 2 },
    })),
  ];
}
