// The sign of a wedge's tip: a small wedge that points up or down.
import type { Tip } from '../../../model/project';

export function TipSign({ tip }: { tip: Tip }) {
  return (
    <svg width="12" height="13" viewBox="0 0 12 13" aria-hidden className="wdg-tip">
      <path d={tip === 'up' ? 'M1 12H11L7 1H5Z' : 'M1 1H11L7 12H5Z'} />
    </svg>
  );
}
