// The text alternative of the picture, to copy wherever the picture is shown. The words lie on the large area.
import { Copy } from 'lucide-react';
import { alternativeText } from '../../../drawing/pictureText';
import { useApp } from '../../app';
import { useSay, useWrite } from '../../words';
import { Part } from './Part';
import { canCopyWords, useCopyWords } from './useCopyWords';

export function WordsSection() {
  const say = useSay();
  const write = useWrite();
  const project = useApp((app) => app.project);
  const [copy, told] = useCopyWords();
  const foot = canCopyWords() ? (
    <>
      <button
        type="button"
        className="button solid"
        onClick={() =>
          copy(
            alternativeText(project)
              .map((one) => write(one))
              .join(' '),
          )
        }
      >
        <Copy size={16} aria-hidden /> {say('Copy the words')}
      </button>
      <p role="status" className={told ? undefined : 'hidden-text'}>
        {told ? say(told) : ''}
      </p>
    </>
  ) : null;
  return (
    <Part id="words" foot={foot}>
      <p className="quiet">
        {say('For people who do not see the picture: put it with the picture wherever you show it.')}
      </p>
    </Part>
  );
}
