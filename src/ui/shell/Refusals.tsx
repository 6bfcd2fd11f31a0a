// Shows why a file or a kept quilt was not opened, with the place in it. A damaged quilt can be saved to a file unchanged, so
// that someone can repair it by hand.
import { FileDown } from 'lucide-react';
import type { Problem } from '../../model/result';
import { damagedFileName } from '../../store/storage/projectFiles';
import { Saved } from '../fields/Saved';
import { useSessionState } from '../session';
import { useSaveFile } from '../useSaveFile';
import { useSay } from '../words';

const MOST_SHOWN = 6;

/** `problems`: why the file or quilt just chosen was not opened. Without problems it shows the damage found at the start. */
export function Refusals({ problems }: { problems: readonly Problem[] }) {
  const say = useSay();
  const damaged = useSessionState((state) => state.damaged);
  const { saveText, saved } = useSaveFile();
  const shown = problems.length > 0 ? problems : (damaged?.problems ?? []);
  const ofDamaged = damaged?.problems === shown ? damaged : null;
  return (
    <div role="alert">
      {shown.length > 0 ? (
        <div className="complaint">
          <p>
            {ofDamaged
              ? say('{name} is damaged and was not opened. It stays saved as it is.', {
                  name: ofDamaged.name,
                })
              : say('It was not opened; the quilt on the wall is untouched.')}
          </p>
          <ul>
            {shown.slice(0, MOST_SHOWN).map((problem, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: one place may have several reasons
              <li key={index}>
                {problem.path ? <code>{problem.path}</code> : null} {say(problem.message)}
              </li>
            ))}
          </ul>
          {ofDamaged ? (
            <button
              type="button"
              className="button"
              style={{ marginTop: '0.4rem' }}
              onClick={() => saveText(damagedFileName(ofDamaged.name), ofDamaged.text)}
            >
              <FileDown size={16} aria-hidden /> {say('Save the damaged quilt to a file')}
            </button>
          ) : null}
          <Saved words={saved} />
        </div>
      ) : null}
    </div>
  );
}
