// The strip at the foot of the screen: every fabric in the top from light to dark, as wide as its share. Pointing at a fabric
// lights its pieces on the wall; a press lets them stay lit.
import { memo, type PointerEvent, useDeferredValue, useMemo } from 'react';
import { drawProject } from '../../drawing/drawProject';
import { clothValue, fabricShares } from '../../drawing/shares';
import type { Fabric, Project } from '../../model/project';
import { useApp, useAppStore } from '../app';
import { Toolbar } from '../fields/Toolbar';
import { useShownFabrics } from '../seeing/useShownFabrics';
import { useEscape } from '../useEscape';
import { clothFill } from '../wall/cloth';
import { useSay } from '../words';
import { ToneScale, ValueScale } from './ValueScale';

export function ValueStrip() {
  // Shares may come a moment after the wall.
  const project = useDeferredValue(useApp((app) => app.project));
  return (
    <>
      {/* Each by itself, so that the page has a turn between two; the strip then finds all values known. */}
      {project.fabrics.map((fabric) => (
        <Valued key={fabric.id} fabric={fabric} />
      ))}
      <Strip project={project} />
    </>
  );
}

/** Works out the value of a fabric, which is kept for it. */
const Valued = memo(function Valued({ fabric }: { fabric: Fabric }) {
  clothValue(fabric);
  return null;
});

function Strip({ project }: { project: Project }) {
  const say = useSay();
  const store = useAppStore();
  const lit = useApp((app) => app.lit);
  const inTones = useApp((app) => app.look.way === 'tones');
  const held = useApp((app) => app.heldLit);
  const shares = useMemo(() => fabricShares(drawProject(project)), [project]);
  const fabrics = useShownFabrics(project.fabrics);
  const fillOf = useMemo(() => new Map(fabrics.map((one) => [one.id, clothFill(one)])), [fabrics]);
  const light = (fabric: string | null) => store.getState().light(fabric);
  useEscape(() => store.getState().holdLit(null), held !== null);
  const shown = shares.find((one) => one.fabric.id === lit);
  if (shares.length === 0) return null;
  return (
    <section
      className="value-strip"
      aria-label={say('Fabrics in the top, light to dark')}
      onPointerDown={lightUnderFinger}
      onPointerMove={lightUnderFinger}
    >
      <Toolbar
        className="slices"
        aria-label={say('Fabrics, light to dark')}
        onPointerLeave={({ pointerType }) => pointerType !== 'touch' && light(null)}
      >
        {shares.map(({ fabric, share, value }) => (
          <button
            key={fabric.id}
            type="button"
            style={{ flexGrow: share }}
            aria-label={say('{name}: {share}% of the top, value {value}', {
              name: fabric.name,
              share: percent(share),
              value: Math.round(value),
            })}
            aria-pressed={lit === fabric.id}
            onPointerEnter={() => light(fabric.id)}
            onFocus={() => light(fabric.id)}
            onBlur={() => light(null)}
            onClick={() => store.getState().holdLit(held === fabric.id ? null : fabric.id)}
          >
            <svg width="100%" height="100%" aria-hidden>
              <g className="seen" transform="scale(16)">
                {/* Beyond its edges, so that a blur does not fade them. */}
                <rect x="-8" y="-8" width="216" height="26" fill={fillOf.get(fabric.id)} />
              </g>
            </svg>
          </button>
        ))}
      </Toolbar>
      <div className="strip-line" aria-hidden>
        <p className="quiet strip-words">
          {shown
            ? say('{name} · {share}% of the top · value {value}', {
                name: shown.fabric.name,
                share: percent(shown.share),
                value: Math.round(shown.value),
              })
            : say('Light to dark, by share. Press one to keep it lit.')}
        </p>
        {inTones ? <ToneScale shares={shares} lit={lit} /> : <ValueScale shares={shares} lit={lit} />}
      </div>
    </section>
  );
}

/** A finger that slides along the strip lights the fabric under it: slices are narrower than a finger. */
function lightUnderFinger({ pointerType, clientX, clientY, currentTarget }: PointerEvent<HTMLElement>): void {
  if (pointerType !== 'touch') return;
  const under = document.elementFromPoint(clientX, clientY)?.closest('button');
  if (under && currentTarget.contains(under)) under.focus({ preventScroll: true });
}

function percent(share: number): string {
  return share < 0.0095 ? '< 1' : String(Math.round(share * 100));
}
