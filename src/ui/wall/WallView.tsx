// The design wall: the top as cloth on flannel, with what clashes marked, blocks to pick, carry, turn and pin.
import { Maximize, ZoomIn, ZoomOut } from 'lucide-react';
import { type PointerEvent, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Mark } from '../../balance/finding';
import { mergedPaths } from '../../drawing/blockPaths';
import { drawBlock, drawProject } from '../../drawing/drawProject';
import { boxOutline } from '../../geometry/point';
import { findBlock, turnsOf } from '../../model/find';
import type { BlockId } from '../../model/project';
import { shownProject } from '../../store/app';
import { useApp, useAppStore } from '../app';
import { useAnalysis } from '../useAnalysis';
import { useSay } from '../words';
import { BlockTools } from './BlockTools';
import { BlockView } from './BlockView';
import { turnsIn } from './gesture';
import { HungBlockView, Ring } from './HungBlockView';
import { PoolMarks, SeamMarks } from './Marks';
import { SideTable } from './SideTable';
import { useGestures } from './useGestures';
import { useView } from './useView';
import { viewBox } from './view';
import { wallKey } from './wallKeys';

const NO_MARKS: readonly Mark[] = [];

export function WallView({ number }: { number: boolean }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const preview = useApp((app) => app.preview);
  const shown = useMemo(
    () => shownProject({ ...store.getState(), project, preview }),
    [store, project, preview],
  );
  const drawing = useMemo(() => drawProject(shown), [shown]);
  const analysis = useAnalysis(shown);
  const picked = useApp((app) => app.picked);
  const lit = useApp((app) => app.lit);
  const look = useApp((app) => app.look);
  const chosen = useApp((app) => app.finding);
  const frame = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  const view = useView(frame, svg, drawing);
  const { gesture, show, press } = useGestures(frame, view, drawing);
  const [focused, setFocused] = useState(0);
  const { fabrics } = shown;
  const marks = useMemo(
    () => marksByBlock(look.marks ? analysis.findings : [], chosen),
    [analysis, look.marks, chosen],
  );

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
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const box = element.getBoundingClientRect();
      if (event.shiftKey) return view.pan(-event.deltaY - event.deltaX, 0);
      const about = { left: event.clientX - box.left, top: event.clientY - box.top };
      view.zoom(Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0016)), about);
    };
    element.addEventListener('wheel', wheel, { passive: false });
    return () => element.removeEventListener('wheel', wheel);
  }, [view]);

  const near = view.drawn.scale > 4.5;
  const lastCell = shown.wall.cells.length - 1;
  const carried =
    gesture?.kind === 'carry' ? drawing.blocks.find((one) => one.block === gesture.block) : undefined;
  const waiting = gesture?.kind === 'carry' && !carried ? findBlock(project, gesture.block) : undefined;
  const pickedHung = drawing.blocks.find((one) => one.block === picked);
  const moved = new Set(
    preview?.moves.flatMap((move) => ('block' in move ? [move.block] : cellsOf(move, shown))) ?? [],
  );
  return (
    <section className="wall-area" aria-label={say('Design wall')}>
      <div className="wall" ref={frame} onPointerDown={(event) => press(event, { kind: 'ground' })}>
        {/* biome-ignore lint/a11y/useSemanticElements: a drawing cannot be a <fieldset> */}
        <svg
          ref={svg}
          className={look.grey ? 'top grey' : 'top'}
          viewBox={viewBox(view.drawn, view.window)}
          role="group"
          aria-label={say(
            '{rows} rows of {columns}. Arrows go from block to block; R turns, Space lifts, P pins.',
            {
              rows: shown.wall.rows,
              columns: shown.wall.columns,
            },
          )}
          onKeyDown={(event) => {
            const cell = Number(
              (event.target as Element).closest('[data-cell]')?.getAttribute('data-cell') ?? Number.NaN,
            );
            if (Number.isNaN(cell)) return;
            if (wallKey(event, cell, store.getState(), { gesture, show, centreOf, focusCell }))
              event.preventDefault();
          }}
        >
          <rect x={0.25} y={0.35} width={drawing.width} height={drawing.height} className="cloth-shadow" />
          {mergedPaths(drawing.surround, shown.fabrics).map(({ fabric, fill, d }) => {
            return (
              <path
                key={`${fabric} ${fill}`}
                d={d}
                fill={fill || 'none'}
                opacity={lit !== null && lit !== fabric ? 0.13 : 1}
              />
            );
          })}
          {drawing.surround.map((piece) => (
            <polygon
              key={piece.outline.map((point) => `${point.x},${point.y}`).join(' ')}
              points={piece.outline.map((point) => `${point.x},${point.y}`).join(' ')}
              className="seams"
            />
          ))}
          {drawing.emptyCells.map(({ cell, box }) => (
            // biome-ignore lint/a11y/useSemanticElements: an SVG group cannot be a <button>
            <g
              key={`empty ${cell}`}
              role="button"
              tabIndex={cell === Math.min(focused, lastCell) ? 0 : -1}
              aria-label={say('Empty cell, row {row}, column {column}', place(cell, shown.wall.columns))}
              className={gesture?.kind === 'carry' && gesture.over === cell ? 'empty over' : 'empty'}
              data-cell={cell}
              onFocus={() => setFocused(cell)}
              onPointerDown={(event) => pressCell(event, cell)}
            >
              <polygon
                points={boxOutline({
                  x: box.x + 0.3,
                  y: box.y + 0.3,
                  width: box.width - 0.6,
                  height: box.height - 0.6,
                })
                  .map((point) => `${point.x},${point.y}`)
                  .join(' ')}
                className="empty-cell"
              />
              <g
                className="focus-ring"
                transform={`translate(${box.x + box.width / 2} ${box.y + box.height / 2})`}
              >
                <Ring width={box.width - 0.6} height={box.height - 0.6} className="stitch-solid" />
              </g>
            </g>
          ))}
          {drawing.blocks.map((hung) => (
            <HungBlockView
              key={hung.block}
              hung={hung}
              width={drawing.block.width}
              height={drawing.block.height}
              fabrics={fabrics}
              label={say(
                hung.pinned
                  ? 'Block {block}, row {row}, column {column}, pinned'
                  : 'Block {block}, row {row}, column {column}',
                {
                  block: hung.number,
                  ...place(hung.cell, shown.wall.columns),
                },
              )}
              picked={hung.block === picked}
              tabbable={hung.cell === Math.min(focused, lastCell)}
              lit={lit}
              near={near}
              number={number}
              marks={marks.soft.get(hung.block) ?? NO_MARKS}
              strongMarks={marks.strong.get(hung.block) ?? NO_MARKS}
              twist={gesture?.kind === 'twist' && gesture.block === hung.block ? gesture.degrees : 0}
              faded={carried?.block === hung.block}
              onPress={pressCell}
              onFocus={setFocused}
            />
          ))}
          <SeamMarks marks={marks.quiltSoft} strong={false} />
          <SeamMarks marks={marks.quiltStrong} strong />
          <PoolMarks marks={marks.quiltSoft} strong={false} />
          <PoolMarks marks={marks.quiltStrong} strong />
          {drawing.blocks
            .filter((hung) => moved.has(hung.block))
            .map((hung) => (
              <g
                key={`moved ${hung.block}`}
                transform={`translate(${hung.centre.x} ${hung.centre.y})`}
                className="picked"
                aria-hidden
              >
                <Ring width={drawing.block.width} height={drawing.block.height} className="stitch" />
              </g>
            ))}
          {gesture?.kind === 'carry' && gesture.over !== null ? (
            <g transform={`translate(${centreOf(gesture.over).x} ${centreOf(gesture.over).y})`} aria-hidden>
              <Ring width={drawing.block.width} height={drawing.block.height} className="over-ring" />
            </g>
          ) : null}
          {gesture?.kind === 'carry' && (carried || waiting) ? (
            <g className="block carried" transform={`translate(${gesture.at.x} ${gesture.at.y})`} aria-hidden>
              <g
                className="lift"
                transform={`rotate(${(carried?.quarters ?? 0) * 90}) scale(1.04)`}
                opacity={0.92}
              >
                <BlockView
                  pieces={carried?.pieces ?? (waiting ? drawBlock(project, waiting) : [])}
                  fabrics={fabrics}
                  lit={null}
                  near
                />
              </g>
            </g>
          ) : null}
          {pickedHung && gesture?.kind !== 'carry' ? (
            <g
              className="picked"
              transform={`translate(${pickedHung.centre.x} ${pickedHung.centre.y})`}
              aria-hidden
            >
              <Ring width={drawing.block.width} height={drawing.block.height} className="stitch" />
            </g>
          ) : null}
          {pickedHung && gesture === null ? (
            <TurnHandle
              at={{
                x: pickedHung.centre.x + drawing.block.width / 2,
                y: pickedHung.centre.y - drawing.block.height / 2,
              }}
              scale={view.drawn.scale}
              onPress={(event) => {
                event.stopPropagation();
                press(event, { kind: 'handle', block: pickedHung.block });
              }}
            />
          ) : null}
        </svg>
        {pickedHung ? <BlockTools id={pickedHung.block} /> : null}
        {gesture?.kind === 'twist' ? (
          <p className="said">
            {say('Turn by {degrees}°', {
              degrees:
                turnsIn(gesture.degrees, turnsOf(project.wedge.perBlock)) *
                (360 / turnsOf(project.wedge.perBlock)),
            })}
          </p>
        ) : null}
        <div
          className="wall-tools"
          role="toolbar"
          aria-label={say('View of the wall')}
          onPointerDown={(event) => event.stopPropagation()}
        >
          <button
            type="button"
            className="button bare"
            aria-label={say('Closer')}
            title={say('Closer')}
            onClick={() => view.zoom(1.35)}
          >
            <ZoomIn size={18} aria-hidden />
          </button>
          <button
            type="button"
            className="button bare"
            aria-label={say('Farther')}
            title={say('Farther')}
            onClick={() => view.zoom(1 / 1.35)}
          >
            <ZoomOut size={18} aria-hidden />
          </button>
          <button
            type="button"
            className="button bare"
            aria-label={say('Whole top')}
            title={say('Whole top')}
            disabled={view.isFitted}
            onClick={view.fit}
          >
            <Maximize size={18} aria-hidden />
          </button>
        </div>
      </div>
      <SideTable
        fabrics={fabrics}
        over={gesture?.kind === 'carry' && gesture.overTable}
        onPress={(event, block) => press(event, { kind: 'table', block })}
      />
    </section>
  );
}

function place(cell: number, columns: number): { row: number; column: number } {
  return { row: Math.floor(cell / columns) + 1, column: (cell % columns) + 1 };
}

function cellsOf(
  move: { cell: number; other: number } | { cell: number },
  project: { wall: { cells: readonly ({ block: BlockId } | null)[] } },
): BlockId[] {
  const cells = 'other' in move ? [move.cell, move.other] : [move.cell];
  return cells.flatMap((cell) => project.wall.cells[cell]?.block ?? []);
}

function TurnHandle(props: {
  at: { x: number; y: number };
  scale: number;
  onPress: (event: PointerEvent) => void;
}) {
  const radius = 11 / props.scale;
  return (
    <g
      className="turn-handle"
      transform={`translate(${props.at.x} ${props.at.y})`}
      onPointerDown={props.onPress}
      aria-hidden
    >
      <circle r={radius * 2} fill="transparent" />
      <circle r={radius} fill="#fff" stroke="#000" strokeWidth={1.5 / props.scale} />
      <path
        d={`M ${-radius * 0.45} ${-radius * 0.1} A ${radius * 0.46} ${radius * 0.46} 0 1 1 ${-radius * 0.1} ${radius * 0.45}`}
        fill="none"
        stroke="#000"
        strokeWidth={1.8 / props.scale}
      />
    </g>
  );
}

/** Marks of findings, those of the chosen one apart, sorted by the block they lie in. */
function marksByBlock(findings: readonly { id: string; marks: readonly Mark[] }[], chosen: string | null) {
  const soft = new Map<BlockId, Mark[]>();
  const strong = new Map<BlockId, Mark[]>();
  const quiltSoft: Mark[] = [];
  const quiltStrong: Mark[] = [];
  for (const finding of findings) {
    const isChosen = finding.id === chosen;
    for (const mark of finding.marks) {
      if (mark.kind === 'pool' || mark.block === null) (isChosen ? quiltStrong : quiltSoft).push(mark);
      else {
        const into = isChosen ? strong : soft;
        into.set(mark.block, [...(into.get(mark.block) ?? []), mark]);
      }
    }
  }
  return { soft, strong, quiltSoft, quiltStrong };
}
