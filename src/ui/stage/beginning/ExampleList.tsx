// The examples to begin with, each with a small picture.
import { useEffect, useState } from 'react';
import { meanColour } from '../../../cloth/likeness';
import { printMix } from '../../../cloth/print/printMix';
import type { Project } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { type DemoSummary, demoSummaries } from '../../../store/demoSummary';
import { useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { useSession } from '../../session';
import { SmallTop } from '../../wall/SmallTop';
import { useSay } from '../../words';

export function ExampleList() {
  const say = useSay();
  const store = useAppStore();
  const session = useSession();
  const [summaries, setSummaries] = useState<readonly DemoSummary[]>([]);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  useEffect(() => {
    let left = false;
    void demoSummaries(session.demos).then((made) => {
      if (!left) setSummaries(made.map((one) => ({ ...one, project: one.project && asSeen(one.project) })));
    });
    return () => {
      left = true;
    };
  }, [session]);
  const open = async ({ demo }: DemoSummary) => {
    const refused = await session.openDemo(demo);
    setProblems(refused);
    if (refused.length === 0) store.getState().goTo('wall');
  };
  return (
    <div>
      <ul className="way-examples" aria-label={say('Examples')}>
        {summaries.map((summary) => (
          <li key={summary.demo.name}>
            <button type="button" className="button" onClick={() => void open(summary)}>
              {summary.project ? <Picture project={summary.project} /> : null}
              <span>
                <strong>{summary.name}</strong>
                {summary.words ? (
                  <span className="quiet">
                    <Fractions text={say(summary.words)} />
                  </span>
                ) : null}
              </span>
            </button>
          </li>
        ))}
      </ul>
      <Complaint problems={problems} />
    </div>
  );
}

/** The quilt in plain fabrics of the colours its prints have from across the room: their patterns are not on this page. */
function asSeen(project: Project): Project {
  const fabrics = project.fabrics.map((fabric) => ({
    ...fabric,
    colour: meanColour(printMix(fabric)),
    cloth: { kind: 'plain' as const },
  }));
  return { ...project, fabrics };
}

/** The top; its strips where nothing hangs. */
function Picture({ project }: { project: Project }) {
  if (project.wall.cells.some((cell) => cell !== null)) return <SmallTop project={project} label="" />;
  const colours = project.fabrics.filter((fabric) => !fabric.background).map((fabric) => fabric.colour);
  return (
    <svg className="small-top" viewBox={`0 0 12 ${colours.length}`} aria-hidden>
      {colours.map((colour, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two fabrics may have one colour
        <rect key={at} x={((at * 5) % 3) / 3} y={at + 0.1} width={11} height={0.8} fill={colour} />
      ))}
    </svg>
  );
}
