// The design wall: the top as cloth on flannel, with marked findings, and blocks to pick, carry, turn and pin. It puts the layers
// together and passes keys and pointers on. Small, beside the work of another step, it only shows.
import { Expand } from 'lucide-react';
import {
  type CSSProperties,
  type PointerEvent,
  useCallback,
  useDeferredValue,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { Finding } from '../../balance/finding';
import type { Drawing } from '../../drawing/drawing';
import { drawProject } from '../../drawing/drawProject';
import { turnsOf } from '../../model/find';
import { type Move, touchedBy } from '../../model/moves';
import type { BlockId, Project } from '../../model/project';
import { isPlain, rowCount } from '../../model/wallCells';
import { useApp, useAppStore } from '../app';
import { later } from '../later';
import { Shown } from '../Shown';
import { useShownFabrics } from '../seeing/useShownFabrics';
import { useAnalysis } from '../useAnalysis';
import { useSay } from '../words';
import { FlightLayer } from './FlightLayer';
import { type Held, lieOf } from './flights';
import { useDrawable } from './growing/useParts';
import type { Gesture } from './hands/gesture';
import { HandLayer } from './hands/HandLayer';
import { turnsIn } from './hands/turning';
import { useGestures } from './hands/useGestures';
import { useWheel } from './hands/useWheel';
import { wallKey } from './hands/wallKeys';
import { useLightTop } from './moving/useLightTop';
import { SideTable } from './side/SideTable';
import { StandingLine } from './standing/StandingLine';
import { TopLayer } from './TopLayer';
import { useView, type WallView as View } from './useView';
import { ViewTools } from './ViewTools';
import { viewBox } from './view';
import { WallNotice } from './WallNotice';

/** Pixels to the inch from which seams and the direction of prints are drawn. */
const NEAR = 4.5;
const BLOCK_TOOLS = later(async () => (await import('./BlockTools')).BlockTools);
const PHOTO = later(async () => (await import('../seeing/WallPhotoView')).WallPhotoView);
const NO_FINDINGS: readonly Finding[] = [];

interface Props {
  number: boolean;
  small: boolean;
}

export function WallView({ number, small }: Props) {
  const say = useSay();
  const store = useAppStore();
  const open = useApp((app) => app.project);
  const preview = useApp((app) => app.preview);
  const picked = useApp((app) => app.picked);
  const lit = useApp((app) => app.lit);
  const look = useApp((app) => app.look);
  const chosen = useApp((app) => app.finding);
  const spot = useApp((app) => app.spot);
  const step = useApp((app) => app.step);
  const shown = useDrawable(preview?.project ?? open);
  const tried = preview?.project === shown ? preview : null;
  // While another quilt is not drawn yet, hands keep to the one that is.
  const project = shown.id === open.id ? open : shown;
  const drawing = useMemo(() => drawProject(shown), [shown]);
  const fabrics = useShownFabrics(shown.fabrics);
  const { balance } = useAnalysis(shown);
  const frame = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const light = useRef<HTMLCanvasElement>(null);
  const still = useView(frame, sheet, drawing, small, `${shown.id} ${step} ${small}`);
  const zoomed = useLightTop(sheet, light, { drawing, fabrics, sheet: still.sheet, window: still.window });
  const view: View = {
    ...still,
    zoom: (factor, about) => {
      zoomed();
      still.zoom(factor, about);
    },
  };
  const { gesture, press, pressGround, carryByKey, put } = useGestures(frame, view, drawing);
  const [focused, setFocused] = useState(0);
  useWheel(frame, view);

  const centreOf = useCallback(
    (cell: number) => {
      const hung = drawing.blocks.find((one) => one.cell === cell);
      if (hung) return hung.centre;
      const box = drawing.emptyCells.find((one) => one.cell === cell)?.box;
      return box ? { x: box.x + box.width / 2, y: box.y + box.height / 2 } : { x: 0, y: 0 };
    },
    [drawing],
  );
  const focusCell = useCallback((cell: number) => {
    setFocused(cell);
    requestAnimationFrame(() => svg.current?.querySelector<SVGElement>(`[data-cell="${cell}"]`)?.focus());
  }, []);
  const pressCell = useCallback(
    (event: PointerEvent, cell: number) => {
      event.stopPropagation();
      press(event, { kind: 'cell', cell, block: store.getState().project.wall.cells[cell]?.block ?? null });
    },
    [press, store],
  );
  const ringed = useMemo(
    () => (tried ? movedBlocks(tried.command.moves ?? [], project) : new Set(spot?.blocks)),
    [tried, spot, project],
  );
  // An open finding shows its numbers and marks, whatever the switches say.
  const findings = balance?.findings ?? NO_FINDINGS;
  const marked = useMemo(
    () => (look.marks ? findings : findings.filter((one) => one.id === chosen)),
    [look.marks, findings, chosen],
  );
  const numbered = useMemo(() => {
    const opened = spot === null ? findings.find((one) => one.id === chosen) : spot;
    return new Set(opened?.blocks);
  }, [findings, chosen, spot]);
  const turns = turnsOf(project.wedge.perBlock);
  const pickedHung = drawing.blocks.find((one) => one.block === picked);
  const box = viewBox(view.sheet, view.window);
  // Seams and directions of prints are drawn a moment after the view, because they need all blocks drawn again.
  const near = useDeferredValue(view.sheet.scale > NEAR);
  const carry = gesture?.kind === 'carry' ? gesture : null;
  const twist = gesture?.kind === 'twist' ? gesture : null;
  const held = useMemo(() => heldIn(gesture, drawing), [gesture, drawing]);
  return (
    <section className={small ? 'wall-area small' : 'wall-area'} aria-label={say('Design wall')}>
      <div className="wall-row">
        <div
          className="wall"
          ref={frame}
          inert={small}
          style={{ '--px': 1 / view.sheet.scale } as CSSProperties}
          onPointerDown={pressGround}
        >
          <div className="sheet" ref={sheet}>
            {/* biome-ignore lint/a11y/useSemanticElements: a drawing cannot be a <fieldset> */}
            <svg
              ref={svg}
              className="top"
              viewBox={box}
              role="group"
              aria-label={say(
                '{rows} down, {columns} across. Arrows go from block to block; R turns, Space lifts, P pins.',
                {
                  rows: rowCount(shown),
                  columns: shown.wall.columns,
                },
              )}
              onKeyDown={(event) => {
                const at = (event.target as Element).closest('[data-cell]')?.getAttribute('data-cell');
                if (at == null) return;
                const hands = { gesture, carryByKey, put, centreOf, focusCell };
                if (wallKey(event, Number(at), store.getState(), hands)) event.preventDefault();
              }}
            >
              <TopLayer
                drawing={drawing}
                fabrics={fabrics}
                hanging={shown}
                findings={marked}
                balance={balance}
                chosen={chosen}
                spot={spot?.marks ?? null}
                picked={picked}
                focused={focusable(focused, shown)}
                lit={lit}
                near={near}
                number={number}
                numbered={numbered}
                onPress={pressCell}
                onFocus={setFocused}
              />
            </svg>
            <canvas ref={light} className="light-top seen" aria-hidden />
            {small ? null : (
              <FlightLayer
                drawing={drawing}
                fabrics={fabrics}
                view={view.sheet}
                held={held}
                lit={lit}
                near={near}
                number={number}
              />
            )}
            {/* A separate drawing, so that a moving hand does not paint 400 blocks again in every frame. */}
            <svg className="hand" viewBox={box} aria-hidden>
              <HandLayer
                project={project}
                drawing={drawing}
                fabrics={fabrics}
                gesture={gesture}
                picked={pickedHung}
                moved={ringed}
                scale={view.sheet.scale}
                centreOf={centreOf}
                onHandle={(event, block) => {
                  event.stopPropagation();
                  press(event, { kind: 'handle', block });
                }}
              />
            </svg>
          </div>
          {pickedHung && !preview && !small ? (
            <Shown part={BLOCK_TOOLS} given={{ id: pickedHung.block }} />
          ) : null}
          <WallNotice
            turning={
              twist
                ? say('Turn by {degrees}°', { degrees: turnsIn(twist.degrees, turns) * (360 / turns) })
                : null
            }
          />
          {small ? null : <ViewTools view={view} picked={pickedHung?.centre ?? null} block={drawing.block} />}
        </div>
        {look.photo && !small ? (
          <Shown part={PHOTO} given={{ photo: look.photo, height: drawing.height }} />
        ) : null}
      </div>
      {small ? (
        <button
          type="button"
          className="wall-enlarge"
          aria-label={say('Show the wall large')}
          title={say('Show the wall large')}
          onClick={() => store.getState().enlargeWall(true)}
        >
          <span aria-hidden>
            <Expand size={15} /> {say('Wall')}
          </span>
        </button>
      ) : (
        <SideTable
          fabrics={fabrics}
          over={carry?.overTable ?? false}
          open={carry !== null}
          onPress={(event, block) => press(event, { kind: 'table', block })}
        />
      )}
      <StandingLine gesture={gesture} small={small} />
    </section>
  );
}

/** Where the block in the hand lies, so that it goes on from there when it is let go. */
function heldIn(gesture: Gesture | null, drawing: Drawing): Held | null {
  if (gesture?.kind !== 'carry' && gesture?.kind !== 'twist') return null;
  const hung = drawing.blocks.find((one) => one.block === gesture.block);
  const lie = hung ? lieOf(hung) : null;
  if (gesture.kind === 'carry')
    return { block: gesture.block, at: gesture.at, degrees: lie?.degrees ?? drawing.tilt };
  return lie && { block: gesture.block, at: lie.at, degrees: lie.degrees + gesture.degrees };
}

/** The cell that the keyboard is on; the first cell where a block can hang if that cell is gone. */
function focusable(cell: number, project: Project): number {
  const there = cell < project.wall.cells.length && !isPlain(cell, project);
  return there ? cell : project.wall.cells.findIndex((_, at) => !isPlain(at, project));
}

/** The blocks that a preview moves or changes, for their rings; none if these are nearly all blocks. */
function movedBlocks(moves: readonly Move[], project: Project): ReadonlySet<BlockId> {
  const { blocks } = touchedBy(project, moves);
  return blocks.size * 2 > project.blocks.length ? new Set() : blocks;
}
