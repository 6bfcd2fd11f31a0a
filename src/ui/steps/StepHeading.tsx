// The heading of a step and one line on its purpose.
import { useSay } from '../words';

export function StepHeading({ title, line }: { title: string; line: string }) {
  const say = useSay();
  return (
    <header>
      <h2 tabIndex={-1}>{say(title)}</h2>
      <p>{say(line)}</p>
    </header>
  );
}
