// The other quilts saved in this browser, each with its picture, to open, or to remove after a confirmation. The time of the last change distinguishes
// quilts of the same name.
import { Trash2 } from 'lucide-react';
import { useState } from 'react';
import type { ProjectSummary } from '../../../store/storage/summary';
import { useSession } from '../../session';
import { useSay } from '../../words';
import { plainTime } from '../plainTime';
import { QuiltLine } from './QuiltLine';

interface Props {
  projects: readonly ProjectSummary[];
  onOpen: (id: string) => void;
  onRemove: (id: string) => void;
}

export function KeptQuilts({ projects, onOpen, onRemove }: Props) {
  const say = useSay();
  const session = useSession();
  const [leaving, setLeaving] = useState<string | null>(null);
  if (projects.length === 0) return null;
  return (
    <section aria-label={say('Other quilts saved here')}>
      <h3>{say('Other quilts saved here')}</h3>
      <ul>
        {projects.map(({ id, name, blocks, changedAt, revision }) => (
          <li key={id} className="spread">
            <QuiltLine
              name={name}
              of={`${id} ${revision} ${changedAt}`}
              look={() => session.lookAt(id)}
              onOpen={() => onOpen(id)}
            >
              {say(changedAt > 0 ? '{count} blocks · changed {time}' : '{count} blocks', {
                count: blocks,
                time: plainTime(new Date(changedAt)),
              })}
            </QuiltLine>
            {leaving === id ? (
              <button
                type="button"
                className="button"
                onClick={() => {
                  setLeaving(null);
                  onRemove(id);
                }}
              >
                {say('Remove for good')}
              </button>
            ) : (
              <button
                type="button"
                className="button bare"
                aria-label={say('Remove {name}, changed {time}', {
                  name,
                  time: plainTime(new Date(changedAt)),
                })}
                onClick={() => setLeaving(id)}
              >
                <Trash2 size={16} aria-hidden />
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
