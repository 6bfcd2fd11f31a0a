// A plain figure of a block with numbered places, place 1 on a dark disc, for the block card.
import { useMemo } from 'react';
import { drawBlock } from '../../../drawing/drawProject';
import { direction } from '../../../geometry/block';
import { apothem, finishedBlock } from '../../../geometry/wedge';
import { orientation, turnsOf } from '../../../model/find';
import type { Block } from '../../../model/project';
import { useApp } from '../../app';
import { BlockView } from '../../wall/BlockView';

export function BlockFigure({ block, turn }: { block: Block; turn: number }) {
  const project = useApp((app) => app.project);
  const pieces = useMemo(() => drawBlock(project, block), [project, block]);
  const { perBlock } = project.wedge;
  const { width, height } = finishedBlock(project.wedge);
  const rim = apothem(project.wedge);
  const stands = orientation(block, turn, project.wedge);
  return (
    <svg
      className="block-figure"
      viewBox={`${-width / 2 - 0.1} ${-height / 2 - 0.1} ${width + 0.2} ${height + 0.2}`}
      aria-hidden
    >
      <g transform={`rotate(${(turn * 360) / turnsOf(perBlock)})`}>
        <BlockView pieces={pieces} fabrics={project.fabrics} lit={null} near />
      </g>
      {Array.from({ length: perBlock }, (_, place) => {
        const unit = direction(place + stands, perBlock);
        const at = `translate(${unit.x * rim * 0.7} ${unit.y * rim * 0.7}) scale(${rim / 7})`;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a place is its index
          <g key={place} transform={at} className={place === 0 ? 'place-first' : undefined}>
            <circle r={0.78} className="place-disc" />
            <text y={0.36} className="place-number">
              {place + 1}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
