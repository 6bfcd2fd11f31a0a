// The block that is being entered: its wedges so far as cloth, numbered places, the place at hand marked, and wedges that lack.

import { useMemo } from 'react';
import { drawBlock } from '../../../../drawing/drawProject';
import { outlinePoints } from '../../../../drawing/number';
import { type Entry, proposedTip } from '../../../../editing/entering/entry';
import { bandOutline, direction } from '../../../../geometry/block';
import { apothem, finishedBlock } from '../../../../geometry/wedge';
import { createBlock } from '../../../../model/create';
import { cellOf, orientation, turnsOf } from '../../../../model/find';
import type { Block } from '../../../../model/project';
import { useApp } from '../../../app';
import { wedgeWords } from '../../../steps/blocks/blockWords';
import { BlockView } from '../../../wall/BlockView';
import { useSay } from '../../../words';

interface Props {
  entry: Entry;
  /** The block it goes into; null for a new one. */
  target: Block | null;
  lacking: ReadonlySet<number>;
  onMark: (place: number) => void;
}

export function EntryFace({ entry, target, lacking, onMark }: Props) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { perBlock } = project.wedge;
  const { width, height } = finishedBlock(project.wedge);
  const rim = apothem(project.wedge);
  const emptied = target?.places.every((wedge) => wedge === null) ?? true;
  const pinned = target ? (cellOf(project, target.id)?.pinned ?? false) : false;
  // A block that was empty is turned so that place 1 lies at the top (enterBlocks).
  const upright = emptied && !pinned;
  const turn = upright || !target ? 0 : (cellOf(project, target.id)?.turn ?? 0);
  const block = useMemo((): Block => {
    const base = target ?? createBlock(project);
    return { ...base, places: [...entry.places], cornerShift: upright ? 0 : base.cornerShift };
  }, [project, target, entry.places, upright]);
  const pieces = useMemo(() => drawBlock(project, block), [project, block]);
  const stands = orientation(block, turn, project.wedge);
  const outline = (place: number, inset: number) =>
    outlinePoints(bandOutline(place + stands, rim - inset, 0, perBlock));
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: its places are named one by one
    <svg
      className="entry-face"
      viewBox={`${-width / 2 - 0.1} ${-height / 2 - 0.1} ${width + 0.2} ${height + 0.2}`}
    >
      <g transform={`rotate(${(turn * 360) / turnsOf(perBlock)})`} aria-hidden>
        <BlockView pieces={pieces} fabrics={project.fabrics} lit={null} near />
      </g>
      {entry.places.map((wedge, place) => {
        const unit = direction(place + stands, perBlock);
        const marked = entry.at === place;
        const tip = marked ? proposedTip(entry, place) : null;
        return (
          // biome-ignore lint/a11y/useSemanticElements: an SVG group cannot be a <button>
          <g
            // biome-ignore lint/suspicious/noArrayIndexKey: a place is its index
            key={place}
            role="button"
            tabIndex={-1}
            aria-label={say('Place {place}: {wedge}', {
              place: place + 1,
              wedge: say(wedgeWords(project, wedge)),
            })}
            aria-pressed={marked}
            className={lacking.has(place) ? 'entry-place lacks' : 'entry-place'}
            onClick={() => onMark(place)}
          >
            <polygon points={outline(place, 0)} className="target" />
            {marked ? (
              <>
                <polygon points={outline(place, 0.25)} className="ring stitch-under" />
                <polygon
                  points={outline(place, 0.25)}
                  className="ring stitch"
                  stroke="#fff"
                  strokeWidth={3}
                />
              </>
            ) : null}
            <g
              transform={`translate(${unit.x * rim * 0.68} ${unit.y * rim * 0.68}) scale(${rim / 6.4})`}
              className={marked ? 'place-first' : undefined}
            >
              <circle r={0.85} className="place-disc" />
              <text y={0.36} className="place-number">
                {lacking.has(place) ? '!' : place + 1}
              </text>
              {tip && !wedge ? (
                <text y={2} className="tip-arrow">
                  {tip === 'up' ? '↑' : '↓'}
                </text>
              ) : null}
            </g>
          </g>
        );
      })}
    </svg>
  );
}
