// The words for those who do not see the picture, under the picture they stand for.
import { useMemo } from 'react';
import { alternativeText } from '../../../drawing/pictureText';
import { useApp } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { SmallTop } from '../../wall/SmallTop';
import { useSay } from '../../words';

export function WordsStage() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const sentences = useMemo(() => alternativeText(project), [project]);
  return (
    <figure className="worded">
      <SmallTop project={project} label={say('The quilt as it is')} near />
      <figcaption className="stage-card alternative">
        <Fractions text={sentences.map((one) => say(one)).join(' ')} />
      </figcaption>
    </figure>
  );
}
