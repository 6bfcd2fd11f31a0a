// The sizes of the top and of a block, finished and before they are sewn in. The large area shows them drawn along the top.
import { roundedSumWords } from '../../../drawing/measures';
import { sizeWithSeams } from '../../../geometry/allowance';
import { layOut } from '../../../geometry/setting';
import { cutWedge, finishedBlock, unfinishedBlock, wedgeProblem } from '../../../geometry/wedge';
import { type Phrase, phrase } from '../../../model/phrase';
import { useApp } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { useSay, useWrite } from '../../words';
import { CopyWords } from './CopyWords';
import { Part } from './Part';

export function SizesSection() {
  const say = useSay();
  const write = useWrite();
  const project = useApp((app) => app.project);
  const problem = wedgeProblem(project.wedge);
  const rows = problem ? [] : sizes();
  const rounded = problem ? null : roundedSumWords(project);
  const text = () =>
    [
      ...rows.map(([name, words]) => `${write(name)}: ${write(words)}`),
      ...(rounded ? [write(rounded)] : []),
    ].join('\n');
  return (
    <Part id="sizes" foot={rows.length > 0 ? <CopyWords name="Copy the sizes" text={text} /> : null}>
      {problem ? <p className="complaint">{say(problem)}</p> : null}
      <dl className="sizes">
        {rows.map(([name, words, note]) => (
          <div key={name}>
            <dt>
              {say(name)}
              <span className="quiet">{say(note)}</span>
            </dt>
            <dd>
              <Fractions text={say(words)} />
            </dd>
          </div>
        ))}
      </dl>
      {rounded ? (
        <p className="quiet">
          <Fractions text={say(rounded)} />
        </p>
      ) : null}
    </Part>
  );

  function sizes(): [string, Phrase, string][] {
    const { wedge } = project;
    const top = layOut(project);
    const sewn = sizeWithSeams(top, wedge.outerSeam);
    const finished = finishedBlock(wedge);
    const unfinished = unfinishedBlock(wedge);
    return [
      ['Top, finished', by(top.width, top.height), 'inside the binding'],
      ['Top, as sewn', by(sewn.width, sewn.height), 'with the seam all round'],
      ['Block, finished', by(finished.width, finished.height), 'on the wall'],
      ['Block, unfinished', by(unfinished.width, unfinished.height), 'measure one before you go on'],
      ['Wedge, as cut', by(cutWedge(wedge).base, wedge.cutHeight), 'base by height'],
    ];
  }
}

function by(width: number, height: number): Phrase {
  return phrase('{width} × {height}', { width: { inches: width }, height: { inches: height } });
}
