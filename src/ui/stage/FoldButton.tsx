// Folds the large area of the step away where the screen is small, so that the list of the step has its height, and lays it out again.
import { PanelTopClose, PanelTopOpen } from 'lucide-react';
import { useApp, useAppStore } from '../app';
import { Hint } from '../fields/Hint';
import { useSay } from '../words';
import { useBeginning } from './beginning/useBeginning';
import { useScreen } from './useScreen';
import { AREA_NAMES } from './workNames';

/** Screens on which panel and large area are in each other's way (shell.css). */
const SMALL = '(max-width: 1100px), (max-height: 500px)';

/** Whether the large area can be folded away here, and is. */
export function useFolded(): { readonly can: boolean; readonly folded: boolean } {
  const small = useScreen(SMALL);
  const beginning = useBeginning();
  const folded = useApp((app) => app.folded.includes(app.step));
  const can = small && !beginning;
  return { can, folded: can && folded };
}

export function FoldButton() {
  const say = useSay();
  const store = useAppStore();
  const step = useApp((app) => app.step);
  const { can, folded } = useFolded();
  if (!can) return null;
  const name = say(AREA_NAMES[step]);
  const button = (
    <button
      type="button"
      className="button bare fold-button"
      aria-label={name}
      aria-expanded={!folded}
      onClick={() => store.getState().fold(step, !folded)}
    >
      {folded ? <PanelTopOpen size={18} aria-hidden /> : <PanelTopClose size={18} aria-hidden />}
      {folded ? <span aria-hidden>{name}</span> : null}
    </button>
  );
  return (
    <Hint words={folded ? say('Show it') : say('Fold it away')} placement="top">
      {button}
    </Hint>
  );
}
