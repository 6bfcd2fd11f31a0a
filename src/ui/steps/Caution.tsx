// The usual cautions, shown where the tool gives instructions to cut, press or sew. All are common practice, no source.
import { phrase } from '../../model/phrase';
import { Apart } from '../fields/Apart';
import { useSay } from '../words';

const CAUTIONS = {
  cutting: {
    title: 'Before you cut',
    lines: [
      'Close the blade every time you put the cutter down, and keep spare and used blades in a hard container.',
      'Stand, cut away from your body, and keep your fingers off the ruler’s edge. A cut-resistant glove helps.',
      'The figures are a plan: cut and sew one test block first.',
    ],
  },
  pressing: {
    title: 'Before you press',
    lines: [
      'Keep your hand out of the steam, mind the cord, and unplug the iron when you are done.',
      'Press bias edges down; do not pull them.',
    ],
  },
  sewing: {
    title: 'Before you sew',
    lines: [
      'Stop the machine before your fingers go near the needle or you pull a pin.',
      'Keep pins, magnets and small parts away from children.',
      'Your machine’s manual comes before anything said here.',
    ],
  },
} as const;

interface Props {
  about: readonly (keyof typeof CAUTIONS)[];
  /** One line of each, the rest a press away: where nothing is cut, pressed or sewn yet. */
  folded?: boolean;
  /** What it stands in, where cautions of others may be open too. */
  of?: string;
}

export function Caution({ about, folded = false, of }: Props) {
  const say = useSay();
  return (
    <>
      {about.map((one) => (
        <details key={one} className="caution" open={!folded}>
          <summary>
            {folded
              ? say('{title}: {line}', {
                  title: phrase(CAUTIONS[one].title),
                  line: phrase(CAUTIONS[one].lines[0]),
                })
              : say(CAUTIONS[one].title)}
            {of ? <Apart of={of} /> : null}
          </summary>
          <ul>
            {CAUTIONS[one].lines.slice(folded ? 1 : 0).map((line) => (
              <li key={line}>{say(line)}</li>
            ))}
          </ul>
        </details>
      ))}
    </>
  );
}
