// All that is of fabric in the top, with its shadow on the flannel: on the page's own wall, and on the one that is drawn before it.

import { useMemo } from 'react';
import { mergedPaths } from '../../../drawing/blockPaths';
import type { Drawing, HungBlock } from '../../../drawing/drawing';
import { outlinePoints } from '../../../drawing/number';
import type { Fabric, FabricId } from '../../../model/project';
import { HungCloth } from '../HungBlockView';

interface Props {
  drawing: Drawing;
  /** The blocks of the drawing, in the order of the page. */
  blocks: readonly HungBlock[];
  fabrics: readonly Fabric[];
  lit: FabricId | null;
  near: boolean;
}

export function TopCloth({ drawing, blocks, fabrics, lit, near }: Props) {
  const around = useMemo(() => [...drawing.setting, ...drawing.binding], [drawing]);
  const paths = useMemo(() => mergedPaths(around, fabrics), [around, fabrics]);
  return (
    <>
      {/* Without a shadow while cloth is dimmed: it would show through as a patch. */}
      {lit === null ? <ClothShadow drawing={drawing} /> : null}
      <g className="seen hung-cloth" aria-hidden>
        {paths.map(({ fabric, fill, d }) => (
          <path
            key={`${fabric} ${fill}`}
            d={d}
            fill={fill || 'none'}
            opacity={lit !== null && lit !== fabric ? 0.13 : 1}
          />
        ))}
        {around.map(({ outline }) => (
          <polygon key={outlinePoints(outline)} points={outlinePoints(outline)} className="seams" />
        ))}
        {blocks.map((hung) => (
          <HungCloth key={hung.block} hung={hung} fabrics={fabrics} lit={lit} near={near} />
        ))}
      </g>
    </>
  );
}

/** The shadow on the flannel: of the whole top, or of each block while some cells are empty. */
function ClothShadow({ drawing }: { drawing: Drawing }) {
  const whole = [{ key: 'top', x: 0, y: 0, width: drawing.width, height: drawing.height }];
  const { width, height } = drawing.block;
  const single = drawing.blocks.map(({ block, centre }) => ({
    key: block,
    x: centre.x - width / 2,
    y: centre.y - height / 2,
    width,
    height,
  }));
  const parts = drawing.emptyCells.length === 0 ? whole : drawing.tilt === 0 ? single : [];
  return parts.map(({ key, x, y, width: wide, height: high }) => (
    <rect key={key} x={x + 0.25} y={y + 0.35} width={wide} height={high} className="cloth-shadow" />
  ));
}
