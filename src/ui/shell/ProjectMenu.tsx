// The button of the menu of quilts, with the name of the open one and whether it is saved.
import { ChevronDown, FileWarning } from 'lucide-react';
import { useApp } from '../app';
import { later } from '../later';
import { PopupButton } from '../popup/PopupButton';
import { useSessionState } from '../session';
import { useSay } from '../words';
import type { Help } from './help/help';

const MENU = later(async () => (await import('./quilts/QuiltMenu')).QuiltMenu);

export function ProjectMenu({ onHelp }: { onHelp: (help: Help) => void }) {
  const say = useSay();
  const name = useApp((app) => app.project.name);
  const saving = useSessionState((state) => state.saving);
  const problem = useSessionState((state) => state.problem);
  const damaged = useSessionState((state) => state.damaged);
  const conflict = useSessionState((state) => state.conflict);
  return (
    <div className="row" style={{ flexWrap: 'nowrap', minWidth: 0 }}>
      <PopupButton
        className="button project-button"
        name={say('Quilt: {name}. Open, save, other quilts', { name })}
        opens={say('Quilts and files')}
        part={MENU}
        given={{ onHelp }}
      >
        <bdi className="title">{name || say('Untitled quilt')}</bdi>
        <ChevronDown size={16} aria-hidden />
      </PopupButton>
      <span
        className="save-state"
        role="status"
        // Heard only where something is wrong: each change is told in a sentence of its own.
        aria-live={problem || conflict || damaged ? 'polite' : 'off'}
        title={problem ? say(problem.message) : undefined}
      >
        {problem ? (
          <strong>{say('Not saved')}</strong>
        ) : conflict ? (
          <strong>{say('Saved as a copy')}</strong>
        ) : damaged ? (
          <strong className="row" title={say('Another quilt is damaged')}>
            <FileWarning size={18} aria-hidden />
            <span className="spoken">{say('Another quilt is damaged')}</span>
          </strong>
        ) : (
          <span className="long" data-widest={say('Saving …')}>
            {say(saving === 'saved' ? 'Saved' : 'Saving …')}
          </span>
        )}
      </span>
    </div>
  );
}
