// The picture to take away: SVG, PNG at a chosen size, the clipboard, the system's share sheet.
import { Copy, FileDown, Share2 } from 'lucide-react';
import { useDeferredValue, useMemo, useState } from 'react';
import { pictureCaption } from '../../../drawing/pictureText';
import { pictureSvg } from '../../../store/picture/picture';
import { fileName } from '../../../store/storage/projectFiles';
import { useApp } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { useSaveFile } from '../../useSaveFile';
import { useSay, useWrite } from '../../words';
import { PartHeading } from './PartHeading';
import { PictureSize } from './PictureSize';
import { canCopy, canShare, usePng } from './usePng';

export function PictureSection() {
  const say = useSay();
  const write = useWrite();
  const saveFile = useSaveFile();
  const open = useApp((app) => app.project);
  const project = useDeferredValue(open);
  const [caption, setCaption] = useState(true);
  const [marks, setMarks] = useState(false);
  const [width, setWidth] = useState(2400);
  const line = caption ? write(pictureCaption(project)) : null;
  const svg = useMemo(() => pictureSvg(project, { caption: line, marks }), [project, line, marks]);
  const png = usePng(svg, width, project.name);
  const busy = png.stage !== null;
  return (
    <section aria-labelledby="picture-title">
      <PartHeading id="picture-title" />
      <div className="stack">
        <div className="stack tight">
          <label className="check">
            <input type="checkbox" checked={caption} onChange={() => setCaption(!caption)} />
            {say('With a caption: name, size, blocks')}
          </label>
          <label className="check">
            <input type="checkbox" checked={marks} onChange={() => setMarks(!marks)} />
            {say('With what clashes marked')}
          </label>
        </div>
        <PictureSize svg={svg} width={width} onChange={setWidth} />
        <div className="row">
          <button type="button" className="button solid" disabled={busy} onClick={() => void png.save()}>
            <FileDown size={16} aria-hidden /> {say('Save as PNG')}
          </button>
          <button
            type="button"
            className="button"
            onClick={() => saveFile(fileName(project.name, '.svg'), svg, 'image/svg+xml')}
          >
            <FileDown size={16} aria-hidden /> {say('Save as SVG')}
          </button>
          {canCopy() ? (
            <button type="button" className="button" disabled={busy} onClick={() => void png.copy()}>
              <Copy size={16} aria-hidden /> {say('Copy the picture')}
            </button>
          ) : null}
          {canShare() ? (
            <button type="button" className="button" disabled={busy} onClick={() => void png.share()}>
              <Share2 size={16} aria-hidden /> {say('Share')}
            </button>
          ) : null}
        </div>
        <p role="status" className={png.told ? undefined : 'hidden-text'}>
          {png.told ? say(png.told) : ''}
        </p>
        <Complaint problems={png.problems} />
        <p className="quiet">
          {say('In the SVG one unit is one inch, and every piece carries its fabric, block, place and band.')}
        </p>
      </div>
    </section>
  );
}
