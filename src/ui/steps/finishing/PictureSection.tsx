// The choices for the picture to take away: SVG, PNG at a chosen size, the clipboard, the system's share sheet. The picture itself
// lies on the large area.
import { Copy, FileDown, Share2 } from 'lucide-react';
import { useApp, useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { Saved } from '../../fields/Saved';
import { useSay, useUnit } from '../../words';
import { Part } from './Part';
import { PictureSize } from './PictureSize';
import { usePictureSvg } from './usePictureSvg';
import { canCopy, canShare, type MakingPng } from './usePng';

export function PictureSection({ png }: { png: MakingPng }) {
  const say = useSay();
  const unit = useUnit();
  const { lay } = useAppStore().getState();
  const name = useApp((app) => app.project.name);
  const { caption, marked, pixels } = useApp((app) => app.laid);
  const svg = usePictureSvg();
  const asked = { svg, width: pixels, name };
  const drawn = png.drawnFor(asked);
  const busy = png.stage !== null;
  const foot = (
    <>
      <button
        type="button"
        className="button solid"
        aria-disabled={busy}
        onClick={() => void png.save(asked)}
      >
        <FileDown size={16} aria-hidden /> {say('Save the picture (PNG)')}
      </button>
      <p role="status" className={png.told ? undefined : 'hidden-text'}>
        {png.told ? say(png.told) : ''}
      </p>
      <Saved words={png.saved} />
      <Complaint problems={png.problems} />
    </>
  );
  return (
    <Part id="picture" foot={foot}>
      <div className="stack">
        <div className="stack tight">
          <label className="check">
            <input type="checkbox" checked={caption} onChange={() => lay({ caption: !caption })} />
            {say('With a caption: name, size, blocks')}
          </label>
          <label className="check">
            <input type="checkbox" checked={marked} onChange={() => lay({ marked: !marked })} />
            {say('With the clashes marked')}
          </label>
        </div>
        <PictureSize svg={svg} width={pixels} onChange={(width) => lay({ pixels: width })} />
        <div className="row">
          <button type="button" className="button" onClick={() => png.saveSvg(asked)}>
            <FileDown size={16} aria-hidden /> {say('Save as SVG')}
          </button>
          {canCopy() ? (
            <button
              type="button"
              className="button"
              aria-disabled={busy}
              onClick={() => void png.copy(asked)}
            >
              <Copy size={16} aria-hidden /> {say('Copy the picture')}
            </button>
          ) : null}
          {canShare() ? (
            <button
              type="button"
              className="button"
              aria-disabled={busy}
              onClick={() => void (drawn ? png.share(drawn, name) : png.drawToShare(asked))}
            >
              <Share2 size={16} aria-hidden /> {say(drawn ? 'Share now' : 'Share')}
            </button>
          ) : null}
        </div>
        <p className="quiet">
          {say(
            unit === 'in'
              ? 'In the SVG one unit is one inch, and every piece carries its fabric, block, place and band.'
              : 'In the SVG one unit is {length} cm, and every piece carries its fabric, block, place and band.',
            { length: 2.54 },
          )}
        </p>
      </div>
    </Part>
  );
}
