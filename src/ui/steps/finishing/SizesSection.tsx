// The sizes of the top and of a block, finished and before they are sewn in.
import { sizeWithSeams } from '../../../geometry/allowance';
import { layOut } from '../../../geometry/setting';
import { cutWedge, finishedBlock, unfinishedBlock, wedgeProblem } from '../../../geometry/wedge';
import { type Phrase, phrase } from '../../../model/phrase';
import { useApp } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { PartHeading } from './PartHeading';

export function SizesSection() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const problem = wedgeProblem(project.wedge);
  const rows = problem ? [] : sizes();
  return (
    <section aria-labelledby="sizes-title">
      <PartHeading id="sizes-title" />
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
    </section>
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
