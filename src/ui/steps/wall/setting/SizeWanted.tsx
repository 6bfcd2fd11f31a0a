// Asks for a wanted size. Tops near it lie on the large area (stage/wall), where one is used.
import { layOut } from '../../../../geometry/setting';
import { useApp, useAppStore } from '../../../app';
import { LengthField } from '../../../fields/LengthField';
import { useSay } from '../../../words';

const LEAST = 6;
/** The greatest size, inches: forty blocks of sixteen inches. */
const MOST = 640;

export function SizeWanted() {
  const say = useSay();
  const store = useAppStore();
  const wanted = useApp((app) => app.laid.sizes);
  const open = (isOpen: boolean) => {
    if (isOpen === (store.getState().laid.sizes !== null)) return;
    const { width, height } = layOut(store.getState().project);
    const sizes = { width: Math.round(width), height: Math.round(height) };
    store.getState().lay({ sizes: isOpen ? sizes : null });
  };
  const take = (change: Partial<NonNullable<typeof wanted>>) => {
    const now = store.getState().laid.sizes;
    if (now) store.getState().lay({ sizes: { ...now, ...change } });
    return [];
  };
  return (
    <section aria-label={say('Fit to a size')}>
      <details
        className="fold alone"
        open={wanted !== null}
        onToggle={(event) => open(event.currentTarget.open)}
      >
        <summary>
          <span className="name">{say('Fit to a size …')}</span>
          <span className="quiet now">{say('ways to a size you want')}</span>
        </summary>
        {wanted ? (
          <div className="stack">
            <div className="wanted">
              <LengthField
                label="Width"
                value={wanted.width}
                least={LEAST}
                most={MOST}
                onCommit={(width) => take({ width })}
              />
              <LengthField
                label="Height"
                value={wanted.height}
                least={LEAST}
                most={MOST}
                onCommit={(height) => take({ height })}
              />
            </div>
            <p className="quiet">
              {say('Tops close to that size are shown in the large area, each with Use.')}
            </p>
          </div>
        ) : null}
      </details>
    </section>
  );
}
