// A picture of the cloth with every piece in its place, hanging off the bolt, selvages at both sides.

import type { ClothLayout, ClothSheet, PlacedCut } from '../../../cutting/yardage/clothLayout';
import type { CuttingLine } from '../../../cutting/yardage/cuttingLine';
import { phrase } from '../../../model/phrase';
import type { Fabric } from '../../../model/project';
import { Fractions } from '../../fields/Fractions';
import { clothFill } from '../../wall/cloth';
import { useSay } from '../../words';

interface Props {
  layout: ClothLayout;
  fabric: Fabric;
  lines: readonly CuttingLine[];
  /** Pixels to the inch. */
  scale: number;
}

interface SheetInUse {
  readonly sheet: ClothSheet;
  readonly index: number;
  readonly cuts: readonly PlacedCut[];
}

/** The pieces of cloth from which something is cut. */
export function sheetsInUse(layout: ClothLayout): SheetInUse[] {
  const cutsOf = new Map<number, PlacedCut[]>();
  for (const cut of layout.placed) {
    const cuts = cutsOf.get(cut.sheet);
    if (cuts) cuts.push(cut);
    else cutsOf.set(cut.sheet, [cut]);
  }
  return layout.sheets.flatMap((sheet, index) => {
    const cuts = cutsOf.get(index);
    return cuts ? [{ sheet, index, cuts }] : [];
  });
}

export function ClothPicture({ layout, fabric, lines, scale }: Props) {
  const say = useSay();
  return (
    <div className="cloth-pictures">
      {sheetsInUse(layout).map(({ sheet, index, cuts }) => (
        <svg
          key={index}
          role="img"
          aria-label={say(
            phrase('{count} pieces on fabric {across} wide and {along} long', {
              count: cuts.length,
              across: { inches: sheet.across },
              along: { inches: sheet.along },
            }),
          )}
          width={sheet.across * scale}
          height={sheet.along * scale}
          viewBox={`0 0 ${sheet.across} ${sheet.along}`}
        >
          <rect className="cloth-rest" width={sheet.across} height={sheet.along} />
          {cuts.map((cut, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: cuts are told apart by their order only
            <g key={at}>
              <title>{lines[cut.line]?.pieces[0] ? say(lines[cut.line]!.pieces[0]!.what) : ''}</title>
              <rect x={cut.x} y={cut.y} width={cut.across} height={cut.along} fill={clothFill(fabric)} />
              <rect className="cloth-cut" x={cut.x} y={cut.y} width={cut.across} height={cut.along} />
            </g>
          ))}
          <CutSizes cuts={cuts} scale={scale} />
          <rect className="cloth-edge" width={sheet.across} height={sheet.along} />
        </svg>
      ))}
    </div>
  );
}

/** Pixels that a size needs inside its piece. */
const LEAST = { high: 15, toLetter: 7.2 };

/** The size of the first piece of each strip, where it has room; a ground of paper keeps it readable on any print. */
function CutSizes({ cuts, scale }: { cuts: readonly PlacedCut[]; scale: number }) {
  const say = useSay();
  const size = 12 / scale;
  const seen = new Set<number>();
  return cuts.map((cut) => {
    if (seen.has(cut.strip)) return null;
    seen.add(cut.strip);
    const square = Math.abs(cut.across - cut.along) < 1e-9;
    const words = say(square ? '{across}' : '{across} × {along}', {
      across: { inches: cut.across },
      along: { inches: cut.along },
    });
    const wide = (words.length * LEAST.toLetter) / scale;
    if (cut.along * scale < LEAST.high || cut.across < wide) return null;
    const y = cut.y + cut.along / 2;
    return (
      <g key={cut.strip}>
        <rect
          className="cut-ground"
          x={cut.x + 4 / scale}
          y={y - size * 0.62}
          width={wide}
          height={size * 1.24}
          rx={2 / scale}
        />
        <text
          className="cut-words"
          x={cut.x + 4 / scale + wide / 2}
          y={y + size * 0.36}
          fontSize={size}
          textAnchor="middle"
        >
          <Fractions text={words} inDrawing />
        </text>
      </g>
    );
  });
}
