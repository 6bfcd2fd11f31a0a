// How strip sets are sewn and pressed; common practice, no source.
import { useSay } from '../../words';
import { Caution } from '../Caution';

const LINES = [
  'Sew with 10 to 12 stitches to the inch: the seams get cut across.',
  'Press all seams of a set one way; the arrows show which. Up and down wedges then nest.',
  'If a set bows, sew the strips from opposite ends in turn, as the arrows at the ends show.',
] as const;

export function SewingAids() {
  const say = useSay();
  return (
    <section aria-label={say('At the machine')}>
      <h3>{say('At the machine')}</h3>
      <ul className="set-aids">
        {LINES.map((line) => (
          <li key={line}>{say(line)}</li>
        ))}
      </ul>
      <Caution about={['sewing', 'pressing']} />
    </section>
  );
}
