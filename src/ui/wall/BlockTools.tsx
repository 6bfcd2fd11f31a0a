// Buttons for the picked block at the foot of the wall: turn, swap with the block that is tapped next, pin, take down.
import {
  ArrowLeftRight,
  PinIcon,
  PinOff,
  RotateCcw,
  RotateCw,
  StepForward,
  TableProperties,
} from 'lucide-react';
import { pinBlocks, takeDown, turnBlock, turnByOneWedge } from '../../editing/commands/wall';
import { cellOf, findBlock } from '../../model/find';
import { whyCornersLocked, whyHangingLocked } from '../../model/freedom';
import { phrase } from '../../model/phrase';
import type { BlockId } from '../../model/project';
import { useApp, useAppStore } from '../app';
import { Toolbar } from '../fields/Toolbar';
import { useEscape } from '../useEscape';
import { useSay } from '../words';
import { ToolButton } from './ToolButton';
import './tools.css';

const SWAP = 'Choose the block that changes places with block {block}.';

export function BlockTools({ id }: { id: BlockId }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const swapping = useApp((app) => app.swapping);
  useEscape(() => store.getState().swapNext(false), swapping);
  const block = findBlock(project, id);
  const cell = cellOf(project, id);
  if (!block || !cell) return null;
  const locked = whyHangingLocked(project, block);
  const quarter = project.wedge.perBlock % 4 === 0;
  const run = (command: Parameters<ReturnType<typeof store.getState>['run']>[0]) =>
    store.getState().run(command);
  const corners = whyCornersLocked(project, block);
  const reason = locked ? say(locked) : null;
  const swap = () => {
    const app = store.getState();
    app.swapNext(!swapping);
    if (!swapping) app.announce(phrase(SWAP, { block: block.number }));
  };
  const turnName = quarter ? say('Turn a quarter clockwise (R)') : say('Turn round (R)');
  return (
    <Toolbar
      className="block-tools"
      aria-label={say('Block {block}', { block: block.number })}
      onPointerDown={(event) => event.stopPropagation()}
    >
      <span className="name">{block.number}</span>
      <ToolButton
        name={say('Turn a quarter back (Shift R)')}
        word={say('Back')}
        icon={<RotateCcw size={18} aria-hidden />}
        reason={reason}
        onPress={() => run(turnBlock(project, id, -1))}
      />
      <ToolButton
        name={turnName}
        word={say('Turn')}
        icon={<RotateCw size={18} aria-hidden />}
        reason={reason}
        onPress={() => run(turnBlock(project, id, 1))}
      />
      {block.progress === 'planned' || block.progress === 'octagon' ? (
        <ToolButton
          name={say('Turn one wedge forward (])')}
          word={say('One wedge')}
          icon={<StepForward size={18} aria-hidden />}
          reason={corners ? say(corners) : null}
          onPress={() => run(turnByOneWedge(project, id, 1))}
        />
      ) : null}
      <ToolButton
        name={say('Swap with the block chosen next')}
        word={say('Swap')}
        icon={<ArrowLeftRight size={18} aria-hidden />}
        pressed={swapping}
        reason={reason}
        onPress={swap}
      />
      <ToolButton
        name={cell.pinned ? say('Unpin (P)') : say('Pin it here (P)')}
        word={say('Pin')}
        icon={cell.pinned ? <PinOff size={18} aria-hidden /> : <PinIcon size={18} aria-hidden />}
        pressed={cell.pinned}
        onPress={() => run(pinBlocks(project, [id], !cell.pinned))}
      />
      <ToolButton
        name={say('Take down to the side table (Delete)')}
        word={say('Take down')}
        icon={<TableProperties size={18} aria-hidden />}
        reason={reason}
        onPress={() => run(takeDown(project, id))}
      />
    </Toolbar>
  );
}
