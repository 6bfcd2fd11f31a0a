// Weight and bulk: seams in a block, layers where its points meet, weight of the top with and without sashing, and advice.
import { useMemo } from 'react';
import { bulkReport, weightWords } from '../../../cutting/top/bulk';
import { wedgeProblem } from '../../../geometry/wedge';
import { type Phrase, phrase } from '../../../model/phrase';
import { figureOf } from '../../../model/words/figure';
import { useApp } from '../../app';
import { useSay, useUnit } from '../../words';
import { Part } from './Part';

export function WeightSection() {
  const say = useSay();
  const unit = useUnit();
  const project = useApp((app) => app.project);
  const problem = wedgeProblem(project.wedge);
  const report = useMemo(() => (wedgeProblem(project.wedge) ? null : bulkReport(project)), [project]);
  if (!report?.block) {
    return (
      <Part id="weight">
        {problem ? (
          <p className="complaint">{say(problem)}</p>
        ) : (
          <p className="quiet">{say('Nothing to weigh yet: no block has its wedges.')}</p>
        )}
      </Part>
    );
  }
  const { block, asSet, withoutSashing, advice } = report;
  const sashed = project.setting.sashing.where !== 'none';
  const lines: [name: string, figure: Phrase, note: string][] = [
    [
      'Seams in a block',
      phrase('{strips} + {wedges} + {corners}', {
        strips: block.stripSeams,
        wedges: block.wedgeSeams,
        corners: block.cornerSeams,
      }),
      'of strips, wedges and corners; the block with most',
    ],
    [
      'Layers where its points meet',
      phrase('{layers}', { layers: block.layersAtMiddle }),
      'counted just beside the middle',
    ],
    [
      'Layers of the top, on average',
      phrase('{layers}', { layers: figureOf(asSet.layers, 2) }),
      'with all seam allowances',
    ],
    [
      'Top',
      weightWords(asSet.grams, unit),
      sashed ? 'as it is set, without batting and backing' : 'without batting and backing',
    ],
    ...(sashed
      ? [
          ['Without sashing', weightWords(withoutSashing.grams, unit), 'the same blocks'] as [
            string,
            Phrase,
            string,
          ],
        ]
      : []),
  ];
  return (
    <Part id="weight">
      <dl className="sizes">
        {lines.map(([name, figure, note]) => (
          <div key={name}>
            <dt>
              {say(name)}
              <span className="quiet">{say(note)}</span>
            </dt>
            <dd>{say(figure)}</dd>
          </div>
        ))}
      </dl>
      <ul className="weight-advice">
        {advice.map((one) => (
          <li key={one.say}>{say(one)}</li>
        ))}
      </ul>
      <p className="quiet">
        {say(
          'The weights are an estimate: quilting cotton of 135 to 150 grams to the square metre, a typical figure. Weigh a piece of your own fabric to be sure.',
        )}
      </p>
    </Part>
  );
}
