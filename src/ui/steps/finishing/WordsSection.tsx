// The text alternative of the picture, to copy wherever the picture is shown. The words lie on the large area.
import { alternativeText } from '../../../drawing/pictureText';
import { useApp } from '../../app';
import { useSay, useWrite } from '../../words';
import { CopyWords } from './CopyWords';
import { Part } from './Part';

export function WordsSection() {
  const say = useSay();
  const write = useWrite();
  const project = useApp((app) => app.project);
  const text = () =>
    alternativeText(project)
      .map((one) => write(one))
      .join(' ');
  return (
    <Part id="words" foot={<CopyWords name="Copy the words" text={text} />}>
      <p className="quiet">
        {say('For people who do not see the picture: put it with the picture wherever you show it.')}
      </p>
    </Part>
  );
}
