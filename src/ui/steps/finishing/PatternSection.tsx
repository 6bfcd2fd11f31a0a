// The written pattern to print or sell: the paper, what goes into it, and the file.
import { FileDown } from 'lucide-react';
import { useState } from 'react';
import { PATTERN_PARTS, type PatternPart } from '../../../drawing/pattern/options';
import type { PaperName } from '../../../drawing/pattern/page';
import { useApp } from '../../app';
import { Choice } from '../../fields/Choice';
import { Complaint } from '../../fields/Complaint';
import { useSay } from '../../words';
import { PartHeading } from './PartHeading';
import { usePattern } from './usePattern';

const PART_NAMES: Readonly<Record<PatternPart, string>> = {
  cover: 'Cover, sizes, signs and cautions',
  materials: 'Materials and cutting list',
  sets: 'Strip sets and cutting the wedges',
  blocks: 'Making a block, block cards, map of the wall',
  setting: 'Setting, borders and finishing',
  templates: 'Templates at true size',
};

export function PatternSection() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const usual: PaperName = project.preferences.unit === 'in' ? 'letter' : 'a4';
  const [chosen, setChosen] = useState<PaperName | null>(null);
  const [left, setLeft] = useState<ReadonlySet<PatternPart>>(new Set());
  const { doing, told, problems, make } = usePattern(project);
  const paper = chosen ?? usual;
  const parts = PATTERN_PARTS.filter((part) => !left.has(part));
  const turn = (part: PatternPart) => {
    const next = new Set(left);
    if (!next.delete(part)) next.add(part);
    setLeft(next);
  };
  return (
    <section aria-labelledby="pattern-title">
      <PartHeading id="pattern-title" />
      <div className="stack">
        <p className="quiet">
          {say('The whole quilt written up to sew from: a PDF of drawings that stay sharp at any size.')}
        </p>
        <Choice
          label="Paper"
          value={paper}
          options={[
            { value: 'a4', label: 'A4' },
            { value: 'letter', label: 'Letter' },
          ]}
          onChange={setChosen}
        />
        <fieldset className="pattern-parts">
          <legend className="quiet">{say('What goes into it')}</legend>
          {PATTERN_PARTS.map((part) => (
            <label key={part} className="check">
              <input type="checkbox" checked={!left.has(part)} onChange={() => turn(part)} />
              {say(PART_NAMES[part])}
            </label>
          ))}
        </fieldset>
        <div className="row">
          <button
            type="button"
            className="button solid"
            disabled={doing !== null}
            onClick={() => void make({ paper, parts }, '-pattern.pdf')}
          >
            <FileDown size={16} aria-hidden /> {say('Make the pattern')}
          </button>
          <button
            type="button"
            className="button"
            disabled={doing !== null}
            onClick={() => void make({ paper, parts: ['templates'] }, '-templates.pdf')}
          >
            <FileDown size={16} aria-hidden /> {say('Templates only')}
          </button>
        </div>
        {doing ? (
          <progress
            className="pattern-progress"
            max={1}
            value={doing.share}
            aria-label={say('Making the pattern')}
          />
        ) : null}
        <div role="status" className={doing || told.length > 0 ? 'stack tight' : 'hidden-text'}>
          {doing ? <p>{say(doing.words)}</p> : told.map((line) => <p key={line.say}>{say(line)}</p>)}
        </div>
        <Complaint problems={problems} />
        <p className="quiet">
          {say(
            'Print templates at true size, never fitted to the page, and measure the squares on their first page.',
          )}
        </p>
      </div>
    </section>
  );
}
