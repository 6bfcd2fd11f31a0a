// Small pictures of one step: where on the wall it is, and the blocks it touches before and after. The words beside say the same.
import { useMemo } from 'react';
import type { HandStep, Spot } from '../../../../arrange/byHand/handSteps';
import { drawBlock } from '../../../../drawing/drawProject';
import type { HandList } from '../../../../editing/handList';
import { finishedBlock } from '../../../../geometry/wedge';
import { findBlock, turnsOf } from '../../../../model/find';
import type { BlockId, Project } from '../../../../model/project';
import { halfPlace } from '../../../../model/wallCells';
import { BlockView } from '../../../wall/BlockView';
import { useSay } from '../../../words';

interface Props {
  project: Project;
  list: HandList;
  step: HandStep;
}

export function StepPictures({ project, list, step }: Props) {
  const say = useSay();
  const spots = useMemo(() => spotsOf(step), [step]);
  return (
    <div className="step-pictures" aria-hidden>
      <WallMap project={project} list={list} spots={spots} />
      <PictureRow name={say('Before')}>
        {spots.map((spot) => {
          const carry = step.carries.find(({ from }) => from === spot);
          return <SmallBlock key={spot} project={project} block={carry?.block} turn={carry?.turn ?? 0} />;
        })}
      </PictureRow>
      <PictureRow name={say('After')}>
        {spots.map((spot) => {
          const carry = step.carries.find(({ to }) => to === spot);
          return <SmallBlock key={spot} project={project} block={carry?.block} turn={carry?.turned ?? 0} />;
        })}
      </PictureRow>
    </div>
  );
}

/** Every cell that a step touches, row by row, and the side table last. */
function spotsOf({ carries }: HandStep): readonly Spot[] {
  const spots = new Set(carries.flatMap(({ from, to }) => [from, to]));
  const place = (spot: Spot) => (spot === 'side table' ? Number.POSITIVE_INFINITY : spot);
  return [...spots].sort((one, other) => place(one) - place(other));
}

function PictureRow({ name, children }: { name: string; children: React.ReactNode }) {
  return (
    <figure>
      <figcaption>{name}</figcaption>
      <div>{children}</div>
    </figure>
  );
}

/** A block with its number; an empty place without one. */
function SmallBlock(props: { project: Project; block: BlockId | undefined; turn: number }) {
  const { project, block: id, turn } = props;
  const block = id === undefined ? undefined : findBlock(project, id);
  const pieces = useMemo(() => (block ? drawBlock(project, block) : []), [project, block]);
  const { width, height } = finishedBlock(project.wedge);
  return (
    <span className="small-block">
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: it is hidden from screen readers, which read the words */}
      <svg viewBox={`${-width / 2} ${-height / 2} ${width} ${height}`}>
        {block ? (
          <g transform={`rotate(${(turn * 360) / turnsOf(project.wedge.perBlock)})`}>
            <BlockView pieces={pieces} fabrics={project.fabrics} lit={null} near={false} />
          </g>
        ) : (
          <rect x={-width / 2} y={-height / 2} width={width} height={height} className="no-block" />
        )}
      </svg>
      <b>{block?.number ?? '–'}</b>
    </span>
  );
}

/** The cells of the wall as small squares, those of the step filled. */
function WallMap({ project, list, spots }: { project: Project; list: HandList; spots: readonly Spot[] }) {
  const { from } = list;
  const tilted = project.setting.layout.kind === 'onPoint';
  const side = tilted ? 1.3 : 1.7;
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: as above
    <svg className="hand-map" viewBox={`-1.2 -1.2 ${2 * from.columns + 0.4} ${2 * from.rows + 0.4}`}>
      {from.cells.map((_, cell) => {
        const { down, across } = halfPlace(cell, from);
        return (
          <rect
            // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its index
            key={cell}
            x={across - side / 2}
            y={down - side / 2}
            width={side}
            height={side}
            transform={tilted ? `rotate(45 ${across} ${down})` : undefined}
            className={spots.includes(cell) ? 'touched' : undefined}
          />
        );
      })}
    </svg>
  );
}
