// Buttons of the view: zoom in, zoom out, whole top.
import { Maximize, ZoomIn, ZoomOut } from 'lucide-react';
import { Toolbar } from '../fields/Toolbar';
import { useSay } from '../words';
import { ToolButton } from './ToolButton';
import type { WallView } from './useView';
import './tools.css';

const STEP = 1.35;

export function ViewTools({ view }: { view: WallView }) {
  const say = useSay();
  return (
    <Toolbar
      className="wall-tools"
      aria-label={say('View of the wall')}
      onPointerDown={(event) => event.stopPropagation()}
    >
      <ToolButton
        name={say('Zoom in')}
        word={say('Zoom in')}
        icon={<ZoomIn size={18} aria-hidden />}
        onPress={() => view.zoom(STEP)}
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
        icon={<Maximize size={18} aria-hidden />}
        reason={view.isFitted ? say('The whole top is in sight') : null}
        onPress={view.fit}
      />
    </Toolbar>
  );
}
