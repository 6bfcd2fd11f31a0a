// Buttons of the view: zoom in, zoom out, whole top, full screen; and in full screen, where the bar is out of sight, undo and redo.
import { Grid3x3, Maximize, Minimize, Redo2, Undo2, ZoomIn, ZoomOut } from 'lucide-react';
import { nextLabels } from '../../editing/history';
import type { Point } from '../../geometry/point';
import { useApp, useAppStore } from '../app';
import { Toolbar } from '../fields/Toolbar';
import { useSay } from '../words';
import { ToolButton } from './ToolButton';
import type { WallView } from './useView';
import { type Size, SMALL_CELL } from './view';
import './tools.css';

const STEP = 1.35;
/** Pixels of a block's side once a small picked block was gone close to. */
const CLOSE = 84;

interface Props {
  view: WallView;
  /** The middle of the picked block, in quilt inches. */
  picked: Point | null;
  /** The size of a block, in inches. */
  block: Size;
}

export function ViewTools({ view, picked, block }: Props) {
  const say = useSay();
  const store = useAppStore();
  const full = useApp((app) => app.wallFull);
  const side = Math.min(block.width, block.height);
  const zoomIn = () => {
    const { scale, at } = view.now.current;
    if (picked === null) view.zoom(STEP);
    // A picked block too small to be worked on comes close at once, with its neighbours round it.
    else if (side * scale < SMALL_CELL) view.goTo(picked, CLOSE / side);
    else view.zoom(STEP, { left: at.left + picked.x * scale, top: at.top + picked.y * scale });
  };
  return (
    <Toolbar
      className="wall-tools"
      aria-label={say('View of the wall')}
      onPointerDown={(event) => event.stopPropagation()}
    >
      {full ? <HistoryTools /> : null}
      <ToolButton
        name={say('Zoom in')}
        word={say('Zoom in')}
        icon={<ZoomIn size={18} aria-hidden />}
        onPress={zoomIn}
      />
      <ToolButton
        name={say('Zoom out')}
        word={say('Zoom out')}
        icon={<ZoomOut size={18} aria-hidden />}
        onPress={() => view.zoom(1 / STEP)}
      />
      <ToolButton
        name={say('Whole top')}
        word={say('Whole top')}
        icon={<Grid3x3 size={18} aria-hidden />}
        reason={view.isFitted ? say('The whole top is in sight') : null}
        onPress={view.fit}
      />
      <ToolButton
        name={say('Full screen')}
        word={say('Full screen')}
        icon={full ? <Minimize size={18} aria-hidden /> : <Maximize size={18} aria-hidden />}
        pressed={full}
        onPress={() => store.getState().fillScreen(!full)}
      />
    </Toolbar>
  );
}

function HistoryTools() {
  const say = useSay();
  const store = useAppStore();
  const { undo, redo } = nextLabels(useApp((app) => app.history));
  return (
    <>
      <ToolButton
        name={undo ? say('Undo: {change}', { change: undo }) : say('Nothing to undo')}
        word={say('Undo')}
        icon={<Undo2 size={18} aria-hidden />}
        reason={undo ? null : say('Nothing to undo')}
        onPress={() => store.getState().undo()}
      />
      <ToolButton
        name={redo ? say('Redo: {change}', { change: redo }) : say('Nothing to redo')}
        word={say('Redo')}
        icon={<Redo2 size={18} aria-hidden />}
        reason={redo ? null : say('Nothing to redo')}
        onPress={() => store.getState().redo()}
      />
    </>
  );
}
