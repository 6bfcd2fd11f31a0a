// Buttons for the picked block at the foot of the wall: turn, pin, take down.
import { PinIcon, PinOff, RotateCcw, RotateCw, StepForward, TableProperties } from 'lucide-react';
import { pinBlocks, takeDown, turnBlock, turnByOneWedge } from '../../editing/commands/wall';
import { cellOf, findBlock } from '../../model/find';
import { whyCornersLocked, whyHangingLocked } from '../../model/freedom';
import type { BlockId } from '../../model/project';
import { useApp, useAppStore } from '../app';
import { useSay } from '../words';

export function BlockTools({ id }: { id: BlockId }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const block = findBlock(project, id);
  const cell = cellOf(project, id);
  if (!block || !cell) return null;
  const locked = whyHangingLocked(project, block);
  const quarter = project.wedge.perBlock % 4 === 0;
  const run = (command: Parameters<ReturnType<typeof store.getState>['run']>[0]) =>
    store.getState().run(command);
  const corners = whyCornersLocked(project, block);
  const tool = (
    name: string,
    icon: React.ReactNode,
    act: () => void,
    disabled: string | null,
    pressed?: boolean,
  ) => (
    <button
      type="button"
      className="button bare"
      aria-label={name}
      title={disabled ?? name}
      disabled={disabled !== null}
      {...(pressed === undefined ? {} : { 'aria-pressed': pressed })}
      onClick={act}
    >
      {icon}
    </button>
  );
  const reason = locked ? say(locked) : null;
  const turnName = quarter ? say('Turn a quarter clockwise (R)') : say('Turn round (R)');
  return (
    <div
      className="block-tools"
      role="toolbar"
      aria-label={say('Block {block}', { block: block.number })}
      onPointerDown={(event) => event.stopPropagation()}
    >
      <span className="name">{block.number}</span>
      {tool(
        say('Turn a quarter back (Shift R)'),
        <RotateCcw size={18} />,
        () => run(turnBlock(project, id, -1)),
        reason,
      )}
      {tool(turnName, <RotateCw size={18} />, () => run(turnBlock(project, id, 1)), reason)}
      {block.progress === 'planned' || block.progress === 'octagon'
        ? tool(
            say('Turn by one wedge, corners on the other places (])'),
            <StepForward size={18} />,
            () => run(turnByOneWedge(project, id, 1)),
            corners ? say(corners) : null,
          )
        : null}
      {tool(
        cell.pinned ? say('Take the pin out (P)') : say('Pin it here (P)'),
        cell.pinned ? <PinOff size={18} /> : <PinIcon size={18} />,
        () => run(pinBlocks(project, [id], !cell.pinned)),
        null,
        cell.pinned,
      )}
      {tool(
        say('Take down to the side table (Delete)'),
        <TableProperties size={18} />,
        () => run(takeDown(project, id)),
        reason,
      )}
    </div>
  );
}
