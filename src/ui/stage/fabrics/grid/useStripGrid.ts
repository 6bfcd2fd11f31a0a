// The grid of strips as state: which columns and lines are on show, what is in them, and what can be done to them.
import { useMemo } from 'react';
import { type GridShape, heldLines, shownLines, shownWidths } from '../../../../cutting/onHand/gridShape';
import { countsIn, isSameInches, type StripLine, widthsOf } from '../../../../cutting/onHand/stripGrid';
import { usualWidths } from '../../../../cutting/plan/planStrips';
import { type StripBalance, stripKey, stripsUnused } from '../../../../cutting/sets/stripsUnused';
import { addFabric } from '../../../../editing/commands/fabrics';
import { changeLengths, changeWidth, enterStrips } from '../../../../editing/commands/stripGrid';
import { tooNarrow } from '../../../../model/check';
import { phrase } from '../../../../model/phrase';
import type { FabricId, Project } from '../../../../model/project';
import type { Problem } from '../../../../model/result';
import type { Inches } from '../../../../model/units';
import type { AppStore } from '../../../../store/app';
import { useApp, useAppStore } from '../../../app';
import { firstFabric } from '../../../steps/fabrics/AddFabric';
import { type SetShape, useGridShape } from './useGridShape';

export function useStripGrid() {
  const store = useAppStore();
  const fabrics = useApp((app) => app.project.fabrics);
  const strips = useApp((app) => app.project.stripsOnHand);
  const sets = useApp((app) => app.project.stripSets);
  const [shape, setShape] = useGridShape(store, () => firstShape(store.getState().project));
  const balance = useMemo(
    () => stripsUnused({ fabrics, stripsOnHand: strips, stripSets: sets }),
    [fabrics, strips, sets],
  );
  const widths = useMemo(() => shownWidths(shape.widths, widthsOf(balance)), [shape.widths, balance]);
  const lines = useMemo(() => shownLines(fabrics, strips, shape), [fabrics, strips, shape]);
  const counts = useMemo(() => countsIn(strips, lines, widths), [strips, lines, widths]);
  const missing = useMemo(() => missingIn(balance, lines, widths), [balance, lines, widths]);
  const actions = useMemo(() => actionsOn(store, setShape), [store, setShape]);
  return { fabrics, strips, balance, usual: shape.usual, widths, lines, counts, missing, actions };
}

/** By line and width, how many strips the sets want beyond those on hand; told in the first line of a fabric. */
function missingIn(balance: readonly StripBalance[], lines: readonly StripLine[], widths: readonly Inches[]) {
  const left = new Map(balance.map((row) => [stripKey(row.fabric, row.width), row.left]));
  const seen = new Set<FabricId>();
  return lines.map(({ fabric }) => {
    const first = !seen.has(fabric);
    seen.add(fabric);
    return widths.map((width) => (first ? Math.max(0, -(left.get(stripKey(fabric, width)) ?? 0)) : 0));
  });
}

export type GridActions = ReturnType<typeof actionsOn>;

/** Without strips the columns are the usual widths; each can be overwritten. */
function firstShape(project: Project): GridShape {
  const there = widthsOf(stripsUnused(project));
  return {
    widths: there.length > 0 ? there : usualWidths(project.preferences.unit).map(({ width }) => width),
    lengths: new Map(),
    usual: project.preferences.usableWidth,
  };
}

/** What the cells do. Each change of strips is one undo; it returns why it was refused. */
function actionsOn(store: AppStore, setShape: SetShape) {
  const hold = (before: Project, of: ReadonlySet<FabricId>) =>
    setShape((now) =>
      heldLines(columnsHeld(now, before), shownLines(before.fabrics, before.stripsOnHand, now), of),
    );
  return {
    enter(lines: readonly StripLine[], width: Inches, count: number): readonly Problem[] {
      const { project, run } = store.getState();
      const refused = run(
        enterStrips(
          project,
          lines.map((line) => ({ ...line, width, count })),
        ),
      );
      if (refused.length === 0) hold(project, new Set(lines.map((line) => line.fabric)));
      return refused;
    },
    changeWidth(from: Inches, to: Inches): readonly Problem[] {
      const { project, run } = store.getState();
      const there = project.stripsOnHand.some((row) => isSameInches(row.width, from));
      const refused = there ? run(changeWidth(from, to)) : tooNarrow('width', to, project.wedge.seam);
      if (refused.length === 0)
        setShape((now) => {
          const held = columnsHeld(now, project);
          return { ...held, widths: held.widths.map((one) => (isSameInches(one, from) ? to : one)) };
        }, there);
      return refused;
    },
    addWidth(width: Inches): readonly Problem[] {
      const { project } = store.getState();
      const refused = tooNarrow('width', width, project.wedge.seam);
      if (refused.length > 0) return refused;
      setShape((now) => {
        const held = columnsHeld(now, project);
        return { ...held, widths: [...held.widths, width] };
      });
      return [];
    },
    removeWidth(width: Inches): void {
      setShape((now) => ({ ...now, widths: now.widths.filter((one) => !isSameInches(one, width)) }));
    },
    changeLengths(changed: readonly StripLine[], to: Inches, all = false): readonly Problem[] {
      const { project, run } = store.getState();
      const is = (row: StripLine) =>
        changed.some((line) => line.fabric === row.fabric && isSameInches(line.length, row.length));
      const there = project.stripsOnHand.some(is);
      const refused = there ? run(changeLengths(changed, to)) : [];
      if (refused.length === 0)
        setShape((now) => {
          const lines = shownLines(project.fabrics, project.stripsOnHand, now);
          const of = new Set(changed.map((line) => line.fabric));
          const held = heldLines(columnsHeld(now, project), lines, of, (line) =>
            is(line) ? to : line.length,
          );
          return all ? { ...held, usual: to } : held;
        }, there);
      return refused;
    },
    /** Adds an empty line for strips of another length. */
    addLine(fabric: FabricId): void {
      const { project } = store.getState();
      setShape((now) => {
        const lines = shownLines(project.fabrics, project.stripsOnHand, now);
        const own = lines.filter((line) => line.fabric === fabric).map((line) => line.length);
        const shortest = Math.min(...own);
        // A fat quarter's strips are half as long; any other length is written over it.
        return { ...now, lengths: new Map(now.lengths).set(fabric, [...own, Math.max(1, shortest / 2)]) };
      });
    },
    addFabric(name: string): readonly Problem[] {
      const { project, run } = store.getState();
      if (project.fabrics.some((fabric) => fabric.name.toLowerCase() === name.toLowerCase())) {
        return [
          { code: 'there', path: 'name', message: phrase('There is a fabric called {name}.', { name }) },
        ];
      }
      return run(addFabric({ ...firstFabric(project.fabrics), name }));
    },
  };
}

function columnsHeld(shape: GridShape, project: Project): GridShape {
  return { ...shape, widths: shownWidths(shape.widths, widthsOf(stripsUnused(project))) };
}
