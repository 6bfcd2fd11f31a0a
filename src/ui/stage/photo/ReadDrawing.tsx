// A block as it was read, drawn, for comparing with its photograph.
import { useMemo } from 'react';
import { drawBlock } from '../../../drawing/drawProject';
import { finishedBlock } from '../../../geometry/wedge';
import type { PicturedBlock, PicturedWedge } from '../../../model/project';
import { useApp } from '../../app';
import { BlockView } from '../../wall/BlockView';

export function ReadDrawing({ shown, label }: { shown: readonly PicturedWedge[]; label: string }) {
  const project = useApp((app) => app.project);
  const pieces = useMemo(() => {
    const block: PicturedBlock = {
      id: 'as read',
      kind: 'pictured',
      number: 1,
      picture: '',
      wedges: [...shown],
      places: [],
      cornerShift: 0,
      cornerFabric: null,
      progress: 'squared',
    };
    return drawBlock(project, block).filter((piece) => piece.picture === undefined);
  }, [project, shown]);
  const { width, height } = finishedBlock(project.wedge);
  return (
    <svg viewBox={`${-width / 2} ${-height / 2} ${width} ${height}`} role="img" aria-label={label}>
      <BlockView pieces={pieces} fabrics={project.fabrics} lit={null} near />
    </svg>
  );
}
