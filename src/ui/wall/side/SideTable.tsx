// The side table: the blocks that do not hang on the wall. A block is dragged to a cell, or picked and then an empty cell chosen.
import { type PointerEvent, useMemo } from 'react';
import { drawBlock } from '../../../drawing/drawProject';
import { finishedBlock } from '../../../geometry/wedge';
import { sideTable } from '../../../model/find';
import type { Block, BlockId, Fabric } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { later } from '../../later';
import { Shown } from '../../Shown';
import { useSay } from '../../words';
import { BlockView } from '../BlockView';
import { GestureLine } from '../GestureLine';
import { tapped } from '../hands/gesture';
import { carryOut } from '../hands/useGestures';

const HANG_ALL = later(async () => (await import('./HangAll')).HangAll);

interface Props {
  fabrics: readonly Fabric[];
  over: boolean;
  /** Shown even without blocks, so that a carried block can be put down on it. */
  open: boolean;
  onPress: (event: PointerEvent, block: BlockId) => void;
}

export function SideTable({ fabrics, over, open, onPress }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const picked = useApp((app) => app.picked);
  const waiting = useMemo(() => sideTable(project), [project]);
  if (waiting.length === 0 && !open) return <GestureLine carrying={false} />;
  return (
    <>
      <GestureLine carrying={open} />
      <section
        className={`side-table${over ? ' over' : ''}${waiting.length === 0 ? ' floating' : ''}`}
        aria-label={say('Side table')}
        data-side-table
      >
        <h3>{say('Side table')}</h3>
        {waiting.length > 0 ? <Shown part={HANG_ALL} given={{}} /> : null}
        {waiting.map((block) => (
          <button
            key={block.id}
            type="button"
            className="card"
            aria-pressed={picked === block.id}
            aria-label={say('Block {block}, on the side table', { block: block.number })}
            onPointerDown={(event) => onPress(event, block.id)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' && event.key !== ' ') return;
              event.preventDefault();
              const app = store.getState();
              carryOut(app, tapped({ kind: 'table', block: block.id }, app));
            }}
          >
            <BlockCard block={block} fabrics={fabrics} size={52} />
            <small>{block.number}</small>
          </button>
        ))}
        {waiting.length === 0 ? <span>{say('Let go here to take it down')}</span> : null}
      </section>
    </>
  );
}

/** A small picture of a block. */
function BlockCard({ block, fabrics, size }: { block: Block; fabrics: readonly Fabric[]; size: number }) {
  const project = useApp((app) => app.project);
  const { width, height } = finishedBlock(project.wedge);
  const pieces = useMemo(() => drawBlock(project, block), [project, block]);
  return (
    <svg
      width={size}
      height={(size * height) / width}
      viewBox={`${-width / 2} ${-height / 2} ${width} ${height}`}
      aria-hidden
    >
      <g className="seen">
        <BlockView pieces={pieces} fabrics={fabrics} lit={null} near={false} />
      </g>
    </svg>
  );
}
