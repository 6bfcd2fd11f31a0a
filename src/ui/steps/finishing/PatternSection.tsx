// The written pattern to print or sell: the paper, what goes into it, and the file. Its pages lie on the large area.
import { FileDown, Square } from 'lucide-react';
import { PATTERN_PARTS, type PatternPart } from '../../../drawing/pattern/options';
import { stillOpen } from '../../../drawing/pattern/stillOpen';
import { useApp, useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { Complaint } from '../../fields/Complaint';
import { Saved } from '../../fields/Saved';
import { useSay } from '../../words';
import { Part } from './Part';
import type { MakingPattern } from './usePattern';
import { usePatternOptions } from './usePatternOptions';

const PART_NAMES: Readonly<Record<PatternPart, string>> = {
  cover: 'Cover, sizes, symbols and cautions',
  materials: 'Materials and cutting list',
  sets: 'Strip sets and cutting the wedges',
  blocks: 'Making a block, block cards, map of the wall',
  setting: 'Setting, borders and finishing',
  templates: 'Templates at true size',
};

export function PatternSection({ making }: { making: MakingPattern }) {
  const say = useSay();
  const { lay } = useAppStore().getState();
  const project = useApp((app) => app.project);
  const leftOut = useApp((app) => app.laid.leftOut);
  const { paper, parts } = usePatternOptions();
  const { doing, saved, remarks, problems, make, stop } = making;
  const turn = (part: PatternPart) =>
    lay({
      leftOut: leftOut.includes(part) ? leftOut.filter((one) => one !== part) : [...leftOut, part],
      page: 0,
    });
  const foot = (
    <>
      <button
        type="button"
        className="button solid"
        aria-disabled={doing !== null}
        onClick={() => void make(project, { paper, parts }, '-pattern.pdf')}
      >
        <FileDown size={16} aria-hidden /> {say('Make the pattern (PDF)')}
      </button>
      {doing ? (
        <button type="button" className="button" onClick={stop}>
          <Square size={14} aria-hidden /> {say('Stop')}
        </button>
      ) : null}
      {doing ? (
        <progress
          className="pattern-progress"
          max={1}
          value={doing.share}
          aria-label={say('Making the pattern')}
        />
      ) : null}
      <div role="status" className={doing || remarks.length > 0 ? 'stack tight' : 'hidden-text'}>
        {doing ? <p>{say(doing.words)}</p> : remarks.map((line) => <p key={line.say}>{say(line)}</p>)}
      </div>
      <Saved words={saved} />
      <Complaint problems={problems} />
    </>
  );
  return (
    <Part id="pattern" foot={foot}>
      <div className="stack">
        <p className="quiet">
          {say('The whole quilt written up to sew from: a PDF of drawings that stay sharp at any size.')}
        </p>
        {stillOpen(project).map((open) => (
          <p key={open.say} className="complaint">
            {say(open)}
          </p>
        ))}
        <Choice
          label="Paper"
          value={paper}
          options={[
            { value: 'a4', label: 'A4' },
            { value: 'letter', label: 'Letter' },
          ]}
          onChange={(next) => lay({ paper: next })}
        />
        <fieldset className="pattern-parts">
          <legend className="quiet">{say('What goes into it')}</legend>
          {PATTERN_PARTS.map((part) => (
            <label key={part} className="check">
              <input type="checkbox" checked={!leftOut.includes(part)} onChange={() => turn(part)} />
              {say(PART_NAMES[part])}
            </label>
          ))}
        </fieldset>
        <div className="row">
          <button
            type="button"
            className="button"
            aria-disabled={doing !== null}
            onClick={() => void make(project, { paper, parts: ['templates'] }, '-templates.pdf')}
          >
            <FileDown size={16} aria-hidden /> {say('Templates only')}
          </button>
        </div>
        <p className="quiet">
          {say(
            'Print templates at true size, never fitted to the page, and measure the squares on their first page.',
          )}
        </p>
      </div>
    </Part>
  );
}
