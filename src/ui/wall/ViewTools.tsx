// Buttons of the view: zoom in, zoom out, whole top.
import { Maximize, ZoomIn, ZoomOut } from 'lucide-react';
import type { ReactNode } from 'react';
import { useSay } from '../words';
import type { WallView } from './useView';

const STEP = 1.35;

export function ViewTools({ view }: { view: WallView }) {
  const say = useSay();
  const tool = (name: string, icon: ReactNode, act: () => void, disabled = false) => (
    <button
      type="button"
      className="button bare"
      aria-label={name}
      title={name}
      disabled={disabled}
      onClick={act}
    >
      {icon}
    </button>
  );
  return (
    <div
      className="wall-tools"
      role="toolbar"
      aria-label={say('View of the wall')}
      onPointerDown={(event) => event.stopPropagation()}
    >
      {tool(say('Closer'), <ZoomIn size={18} aria-hidden />, () => view.zoom(STEP))}
      {tool(say('Farther'), <ZoomOut size={18} aria-hidden />, () => view.zoom(1 / STEP))}
      {tool(say('Whole top'), <Maximize size={18} aria-hidden />, view.fit, view.isFitted)}
    </div>
  );
}
