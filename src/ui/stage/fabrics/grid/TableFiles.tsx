// The grid as a file for spreadsheets: saved as CSV, and such a file opened.
import { Download, FolderOpen } from 'lucide-react';
import { useRef } from 'react';
import { csvText } from '../../../../cutting/kits/csv';
import { gridOf } from '../../../../cutting/onHand/stripGrid';
import { MOST_TEXT, tableRows } from '../../../../cutting/onHand/stripTable';
import { phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { fileName } from '../../../../store/storage/projectFiles';
import { useApp } from '../../../app';
import { Saved } from '../../../fields/Saved';
import { useSaveFile } from '../../../useSaveFile';
import { useSay, useUnit, useWrite } from '../../../words';
import type { useStripGrid } from './useStripGrid';

interface Props {
  grid: ReturnType<typeof useStripGrid>;
  onText: (text: string) => void;
  onProblems: (problems: readonly Problem[]) => void;
}

export function TableFiles({ grid, onText, onProblems }: Props) {
  const say = useSay();
  const write = useWrite();
  const unit = useUnit();
  const { saveText, saved } = useSaveFile();
  const name = useApp((app) => app.project.name);
  const file = useRef<HTMLInputElement>(null);
  const { fabrics, strips, usual } = grid;
  return (
    <div className="row">
      <button type="button" className="button" title={say('Open CSV')} onClick={() => file.current?.click()}>
        <FolderOpen size={16} aria-hidden /> <span className="words">{say('Open CSV')}</span>
      </button>
      <input
        ref={file}
        type="file"
        accept=".csv,.tsv,.txt,text/csv,text/plain"
        hidden
        aria-label={say('CSV file of strips')}
        onChange={(event) => {
          const chosen = event.target.files?.[0];
          event.target.value = '';
          if (!chosen) return;
          if (chosen.size > MOST_TEXT) onProblems(TOO_LARGE);
          else
            void chosen.arrayBuffer().then(
              (bytes) => onText(textOf(bytes)),
              () => onProblems(UNREADABLE),
            );
        }}
      />
      {strips.length > 0 ? (
        <button
          type="button"
          className="button"
          title={say('Save CSV')}
          onClick={() => {
            const heads = { fabric: write('Fabric'), length: write('Length') };
            const rows = tableRows(gridOf(fabrics, strips, usual), fabrics, unit, heads);
            const ending = write('strips on hand');
            saveText(
              fileName(`${name} ${ending}`, '.csv'),
              `\uFEFF${csvText(rows)}`,
              'text/csv;charset=utf-8',
            );
          }}
        >
          <Download size={16} aria-hidden /> <span className="words">{say('Save CSV')}</span>
        </button>
      ) : null}
      <Saved words={saved} />
    </div>
  );
}

const TOO_LARGE = [
  {
    code: 'too-large',
    path: '',
    message: phrase('The file is larger than {most} MB.', { most: MOST_TEXT / 1e6 }),
  },
];
const UNREADABLE = [{ code: 'unreadable', path: '', message: phrase('The file cannot be read.') }];

/** Text as spreadsheets write it: UTF-8, UTF-16 with its mark, or else Windows-1252. */
function textOf(bytes: ArrayBuffer): string {
  const [first, second] = new Uint8Array(bytes);
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
