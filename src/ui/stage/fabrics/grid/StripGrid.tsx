// The grid into which strips are entered: fabrics down, cut widths across, numbers in between. It lies on the large area of Fabrics.
import { useEffect, useRef, useState } from 'react';
import { isSameInches } from '../../../../cutting/onHand/stripGrid';
import { phrase } from '../../../../model/phrase';
import { useAppStore } from '../../../app';
import { Apart } from '../../../fields/Apart';
import { Fractions } from '../../../fields/Fractions';
import { useEscape } from '../../../useEscape';
import { useSay, useUnit } from '../../../words';
import { CellLine } from './CellLine';
import { closeGrid } from './closeGrid';
import { CountCell, GridCell, HEADS, LengthCell, NEW_FABRIC, type Place, SAME_FOR_ALL } from './GridCell';
import { GridLine } from './GridLine';
import './grid.css';
import { PastedTable } from './PastedTable';
import { TableFiles } from './TableFiles';
import { focusOn, placeOf, useGridKeys } from './useGridKeys';
import { usePaste } from './usePaste';
import { useStripGrid } from './useStripGrid';

export function StripGrid() {
  const say = useSay();
  const store = useAppStore();
  useEscape(() => closeGrid(store));
  const unit = useUnit();
  const grid = useStripGrid();
  const { fabrics, balance, widths, lines, counts, missing, actions } = grid;
  const table = useRef<HTMLTableElement>(null);
  const [at, setAt] = useState<Place | null>(null);
  const [live, setLive] = useState<(Place & { readonly count: number }) | null>(null);
  const [onLive] = useState(() => (place: Place, count: number | null) => {
    setLive(count === null ? null : { ...place, count });
  });
  const known = new Map(fabrics.map((fabric) => [fabric.id, fabric]));
  const cloths = lines.filter((line) => !known.get(line.fabric)!.background).length;
  const columns = widths.length;
  const keys = useGridKeys({ cloths, lines: lines.length, columns });
  const paste = usePaste(grid);
  // The first head has the focus at first where nothing is on hand; else the first cell.
  useEffect(() => {
    // On a return from another step the focus stays where it is.
    const active = document.activeElement;
    if (active !== document.body && !active?.matches('[data-strips-opener]')) return;
    const empty = store.getState().project.stripsOnHand.length === 0;
    focusOn(table.current, { line: empty ? HEADS : 0, column: 1 });
  }, [store]);
  const shown = withLive(counts, live);
  const sums = widths.map((_, column) => shown.reduce((sum, line) => sum + line[column]!, 0));
  const total = sums.reduce((sum, one) => sum + one, 0);
  const drawn = lines.map((line, index) => {
    const fabric = known.get(line.fabric)!;
    return (
      <GridLine
        key={`${line.fabric} ${lines.slice(0, index).filter((one) => one.fabric === line.fabric).length}`}
        line={index}
        fabric={fabric}
        length={line.length}
        widths={widths}
        counts={counts[index]!}
        missing={missing[index]!}
        sum={shown[index]!.reduce((sum, one) => sum + one, 0)}
        actions={actions}
        onLive={onLive}
      />
    );
  });
  return (
    <section className="strip-grid" aria-label={say('Enter strips')}>
      <div className="grid-head">
        <h3>{say('Strips on hand')}</h3>
        <TableFiles grid={grid} onText={paste.take} onProblems={paste.refuse} />
        <button type="button" className="button solid" onClick={() => closeGrid(store)}>
          {say('Done')}
          <Apart of={say('Strips on hand')} />
        </button>
        <p className="quiet">
          {say(
            'Enter goes down, Tab to the right. A table copied from a spreadsheet can be pasted into any cell.',
          )}
        </p>
      </div>
      <PastedTable
        paste={paste}
        onClose={() => requestAnimationFrame(() => focusOn(table.current, at ?? { line: 0, column: 1 }))}
      />
      <table
        ref={table}
        aria-label={say('Strips on hand by fabric and width')}
        onKeyDown={keys.onKeyDown}
        onPointerDown={keys.onPointerDown}
        onPaste={(event) => paste.onPaste(event, placeOf(event.target))}
        onFocus={(event) => setAt(placeOf(event.target))}
        onBlur={() => store.getState().light(null)}
        onPointerLeave={() => store.getState().light(null)}
      >
        <thead>
          <tr>
            <td colSpan={2} />
            <th scope="colgroup" className="grid-over" colSpan={columns + 1}>
              {say('Cut width ({unit})', { unit })}
            </th>
            <td />
          </tr>
          <tr>
            <th scope="col" className="grid-name">
              {say('Fabric')}
            </th>
            <th scope="col">{say('Length ({unit})', { unit })}</th>
            {widths.map((width, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a column keeps its place while its width is changed
              <th key={index} scope="col">
                <LengthCell
                  of="width"
                  line={HEADS}
                  column={index + 1}
                  name={say('Cut width of column {number}', { number: index + 1 })}
                  value={width}
                  onLength={(to) => {
                    const there = widths.some((one, other) => other !== index && isSameInches(one, to));
                    return there ? THERE : actions.changeWidth(width, to);
                  }}
                  onEmpty={() => {
                    if (balance.some((row) => isSameInches(row.width, width))) return NOT_EMPTY;
                    actions.removeWidth(width);
                    return [];
                  }}
                />
              </th>
            ))}
            <th scope="col" className="grid-new">
              <LengthCell
                of="width"
                adds
                line={HEADS}
                column={columns + 1}
                name={say('Another cut width')}
                value={null}
                placeholder={say('width')}
                onLength={(to) => {
                  if (widths.some((one) => isSameInches(one, to))) return THERE;
                  return actions.addWidth(to);
                }}
              />
            </th>
            <th scope="col" className="grid-sum">
              {say('Total')}
            </th>
          </tr>
        </thead>
        {cloths > 1 ? (
          <tbody className="grid-same">
            <tr>
              <th scope="row" className="grid-name">
                {say('Same for all')}
              </th>
              <td>
                <LengthCell
                  of="length"
                  line={SAME_FOR_ALL}
                  column={0}
                  name={say('Length of all strips')}
                  value={common(lines.slice(0, cloths).map((line) => line.length))}
                  onLength={(to) => actions.changeLengths(lines.slice(0, cloths), to, true)}
                />
              </td>
              {widths.map((width, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a column keeps its place while its width is changed
                <td key={index}>
                  <CountCell
                    line={SAME_FOR_ALL}
                    column={index + 1}
                    name={say('Strips {width} wide, the same for all fabrics', { width: { inches: width } })}
                    count={common(counts.slice(0, cloths).map((line) => line[index]!))}
                    placeholder="–"
                    onCount={(count) => {
                      const refused = actions.enter(lines.slice(0, cloths), width, count);
                      if (refused.length === 0)
                        store
                          .getState()
                          .announce(
                            phrase('{each} strips in each of {count} rows', { each: count, count: cloths }),
                          );
                      return refused;
                    }}
                    onLive={onLive}
                  />
                </td>
              ))}
              <td colSpan={2} />
            </tr>
          </tbody>
        ) : null}
        <tbody>{drawn.slice(0, cloths)}</tbody>
        <tbody>
          <tr>
            <th scope="row" className="grid-name grid-new" colSpan={2}>
              <GridCell
                adds
                line={NEW_FABRIC}
                column={0}
                name={say('Name of a new fabric')}
                shown=""
                placeholder={say('new fabric')}
                take={(text) => (text.trim() === '' ? [] : actions.addFabric(text.trim()))}
              />
            </th>
            <td colSpan={columns + 2} />
          </tr>
        </tbody>
        <tbody>{drawn.slice(cloths)}</tbody>
        <tfoot>
          <tr>
            <th scope="row" className="grid-name" colSpan={2}>
              {say('Strips')}
            </th>
            {sums.map((sum, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a column keeps its place while its width is changed
              <td key={index} className="grid-sum">
                {sum}
              </td>
            ))}
            <td />
            <td className="grid-sum">
              <output>{say('{total}', { total })}</output>
            </td>
          </tr>
        </tfoot>
      </table>
      <CellLine at={at} grid={grid} known={known} />
      {cloths === 0 ? (
        <p>
          <Fractions text={say('Type the name of a fabric; Tab goes on to its strips.')} />
        </p>
      ) : null}
    </section>
  );
}

const THERE = [{ code: 'there', path: 'width', message: phrase('There is a column of this width already.') }];
const NOT_EMPTY = [
  { code: 'not-empty', path: 'width', message: phrase('Strips of this width are on hand or in sets.') },
];

/** Counts with the one that is being typed in its place. */
function withLive(counts: readonly (readonly number[])[], live: (Place & { readonly count: number }) | null) {
  if (!live || live.line < 0) return counts;
  return counts.map((line, at) =>
    at === live.line ? line.map((count, column) => (column + 1 === live.column ? live.count : count)) : line,
  );
}

/** What all have in common; null where they differ. */
function common(all: readonly number[]): number | null {
  const [first] = all;
  return first !== undefined && all.every((one) => isSameInches(one, first)) ? first : null;
}
