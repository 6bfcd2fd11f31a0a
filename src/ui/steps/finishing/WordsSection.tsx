// The text alternative of the picture, to copy wherever the picture is shown.
import { Copy } from 'lucide-react';
import { useMemo, useState } from 'react';
import { alternativeText } from '../../../drawing/pictureText';
import { type Phrase, phrase } from '../../../model/phrase';
import { useApp } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { PartHeading } from './PartHeading';

export function WordsSection() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const sentences = useMemo(() => alternativeText(project), [project]);
  const [told, setTold] = useState<Phrase | null>(null);
  const text = sentences.map((one) => say(one)).join(' ');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setTold(phrase('Copied.'));
    } catch {
      setTold(phrase('The browser did not let it be copied. Select the text and copy it.'));
    }
  };
  return (
    <section aria-labelledby="words-title">
      <PartHeading id="words-title" />
      <div className="stack">
        <p className="quiet">
          {say('For people who do not see the picture: put it with the picture wherever you show it.')}
        </p>
        <p className="alternative">
          <Fractions text={text} />
        </p>
        <div className="row">
          {navigator.clipboard ? (
            <button type="button" className="button" onClick={() => void copy()}>
              <Copy size={16} aria-hidden /> {say('Copy the words')}
            </button>
          ) : null}
          <span role="status">{told ? say(told) : null}</span>
        </div>
      </div>
    </section>
  );
}
