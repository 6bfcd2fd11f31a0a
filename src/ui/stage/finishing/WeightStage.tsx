// What makes a top thick: the seams of the block with most of them, and the middle where its points meet.
import { useMemo } from 'react';
import { layersAtMiddle } from '../../../cutting/top/bulk';
import { seamPath } from '../../../drawing/blockPaths';
import { drawBlock } from '../../../drawing/drawProject';
import { asPieced } from '../../../geometry/asPieced';
import { finishedBlock, wedgeProblem } from '../../../geometry/wedge';
import { useApp } from '../../app';
import { BlockView } from '../../wall/BlockView';
import { useSay } from '../../words';

export function WeightStage() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const thickest = useMemo(() => {
    if (wedgeProblem(project.wedge)) return null;
    const pieced = asPieced(project);
    const whole = pieced.blocks.filter((block) => block.places.every((place) => place !== null));
    const drawn = whole.map((block) => ({ number: block.number, pieces: drawBlock(pieced, block) }));
    return drawn.toSorted((one, other) => other.pieces.length - one.pieces.length)[0] ?? null;
  }, [project]);
  if (!thickest) return <p className="stage-note">{say('No block has all its wedges yet.')}</p>;
  const { width, height } = finishedBlock(project.wedge);
  const layers = layersAtMiddle(project.wedge.perBlock);
  const words = { block: thickest.number, layers };
  return (
    <figure className="fills seamed">
      <svg
        viewBox={`${-width / 2} ${-height / 2} ${width} ${height}`}
        role="img"
        aria-label={say('The seams of block {block}', words)}
      >
        <g opacity={0.75}>
          <BlockView pieces={thickest.pieces} fabrics={project.fabrics} lit={null} near />
        </g>
        <path className="bulk-seams" d={seamPath(thickest.pieces)} />
        <circle className="bulk-middle under" r={width / 14} />
        <circle className="bulk-middle" r={width / 14} />
      </svg>
      <figcaption className="stage-card">
        {say('Block {block} has most seams. In the ring its points meet: {layers} layers of fabric.', words)}
      </figcaption>
    </figure>
  );
}
