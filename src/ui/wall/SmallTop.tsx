// A small picture of a whole top.
import { memo, useMemo } from 'react';
import { mergedPaths } from '../../drawing/blockPaths';
import { drawProject } from '../../drawing/drawProject';
import type { Project } from '../../model/project';

export const SmallTop = memo(function SmallTop({ project, label }: { project: Project; label: string }) {
  const drawing = useMemo(() => drawProject(project), [project]);
  const paths = mergedPaths(drawing.setting, project.fabrics);
  return (
    <svg
      className="small-top"
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      role="img"
      aria-label={label}
    >
      {paths.map(({ fabric, fill, d }) => (
        <path key={`${fabric} ${fill}`} d={d} fill={fill || 'none'} />
      ))}
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
      {drawing.blocks.map((hung) => (
        <g
          key={hung.block}
          transform={`translate(${hung.centre.x} ${hung.centre.y}) rotate(${hung.quarters * 90 + drawing.tilt})`}
        >
          {mergedPaths(
            hung.pieces.map((piece) => ({ ...piece, grain: 0 })),
            project.fabrics,
          ).map(({ fabric, fill, d }) => (
            <path key={`${fabric} ${fill}`} d={d} fill={fill || 'none'} />
          ))}
        </g>
      ))}
    </svg>
  );
});
