// A picture of the cloth with every piece in its place: hanging off the bolt, selvages at both sides, or lying along the table.
import type { ClothLayout } from '../../../../cutting/yardage/clothLayout';
import type { CuttingLine } from '../../../../cutting/yardage/cuttingLine';
import { phrase } from '../../../../model/phrase';
import type { Fabric } from '../../../../model/project';
import { clothFill } from '../../../wall/cloth';
import { useSay } from '../../../words';

interface Props {
  layout: ClothLayout;
  fabric: Fabric;
  lines: readonly CuttingLine[];
}

/** The greatest width and height of a picture on the panel, in pixels. */
const MOST_WIDTH = 336;
const MOST_HEIGHT = 180;

export function ClothPicture({ layout, fabric, lines }: Props) {
  const say = useSay();
  const sheets = layout.sheets.flatMap((sheet, index) => {
    const cuts = layout.placed.filter((cut) => cut.sheet === index);
    return cuts.length > 0 ? [{ sheet, index, cuts }] : [];
  });
  const longest = Math.max(1, ...sheets.map(({ sheet }) => sheet.along));
  const widest = Math.max(1, ...sheets.map(({ sheet }) => sheet.across));
  // It lies along the table where that makes the picture larger.
  const hanging = Math.min(MOST_WIDTH / widest, MOST_HEIGHT / longest);
  const lying = Math.min(MOST_WIDTH / longest, MOST_HEIGHT / widest);
  const scale = Math.max(hanging, lying);
  const upright = hanging >= lying;
  const box = (x: number, y: number, across: number, along: number) =>
    upright ? { x, y, width: across, height: along } : { x: y, y: x, width: along, height: across };
  return (
    <div className="cloth-pictures">
      {sheets.map(({ sheet, index, cuts }) => (
        <svg
          key={index}
          role="img"
          aria-label={say(
            phrase('{count} pieces on cloth {across} wide and {along} long', {
              count: cuts.length,
              across: { inches: sheet.across },
              along: { inches: sheet.along },
            }),
          )}
          width={(upright ? sheet.across : sheet.along) * scale}
          height={(upright ? sheet.along : sheet.across) * scale}
          viewBox={`0 0 ${upright ? sheet.across : sheet.along} ${upright ? sheet.along : sheet.across}`}
        >
          <rect className="cloth-rest" {...box(0, 0, sheet.across, sheet.along)} />
          {cuts.map((cut, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: cuts are told apart by their order only
            <g key={at}>
              <title>{lines[cut.line]?.pieces[0] ? say(lines[cut.line]!.pieces[0]!.what) : ''}</title>
              <rect {...box(cut.x, cut.y, cut.across, cut.along)} fill={clothFill(fabric)} />
              <rect className="cloth-cut" {...box(cut.x, cut.y, cut.across, cut.along)} />
            </g>
          ))}
          <rect className="cloth-edge" {...box(0, 0, sheet.across, sheet.along)} />
        </svg>
      ))}
    </div>
  );
}
