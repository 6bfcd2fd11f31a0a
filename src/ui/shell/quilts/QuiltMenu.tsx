// The menu of quilts: name and saving of the open one, the other saved quilts, examples, files.
import { BookOpen, FileDown, FolderOpen, Keyboard, Scale } from 'lucide-react';
import { useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { renameProject } from '../../../editing/commands/setting';
import { nameWith } from '../../../model/name';
import type { Problem } from '../../../model/result';
import { useApp, useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { Saved } from '../../fields/Saved';
import { TextField } from '../../fields/TextField';
import { Popup } from '../../popup/Popup';
import type { PopupProps } from '../../popup/PopupButton';
import { useSession, useSessionState } from '../../session';
import { useSay } from '../../words';
import type { Help } from '../help/help';
import { useSaveQuilt } from '../notice/useSaveQuilt';
import { Refusals } from '../Refusals';
import { Examples } from './Examples';
import { KeptQuilts } from './KeptQuilts';

export function QuiltMenu({ onHelp, ...popup }: PopupProps & { onHelp: (help: Help) => void }) {
  return (
    <Popup {...popup} placement="bottom start">
      <Menu button={popup.button} close={popup.onClose} onHelp={onHelp} />
    </Popup>
  );
}

interface MenuProps {
  button: HTMLElement;
  close: () => void;
  onHelp: (help: Help) => void;
}

function Menu({ button, close, onHelp }: MenuProps) {
  const say = useSay();
  const session = useSession();
  const store = useAppStore();
  const open = useApp((app) => app.project);
  const projects = useSessionState((state) => state.projects);
  const problem = useSessionState((state) => state.problem);
  const remarks = useSessionState((state) => state.remarks);
  const reading = useSessionState((state) => state.reading);
  const { saveQuilt, saved } = useSaveQuilt();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const file = useRef<HTMLInputElement>(null);
  const lookUp = (help: Help) => {
    // What opens gives the focus back to where it was, which must still be there then.
    flushSync(close);
    button.focus();
    onHelp(help);
  };
  const after = (done: Promise<readonly Problem[]>) =>
    void done.then((refused) => (refused.length === 0 ? close() : setProblems(refused)));
  return (
    <div className="stack" style={{ width: 330, maxWidth: '86vw', padding: 8 }}>
      {problem ? <Complaint problems={[problem]} /> : null}
      {remarks.length > 0 ? (
        <ul className="complaint">
          {remarks.map((sentence) => (
            <li key={say(sentence)}>{say(sentence)}</li>
          ))}
        </ul>
      ) : null}
      <TextField
        label="Name of this quilt"
        value={open.name}
        onCommit={(name) => store.getState().run(renameProject(name), 'here')}
      />
      <div className="row">
        <button type="button" className="button" onClick={saveQuilt}>
          <FileDown size={16} aria-hidden /> {say('Save to a file')}
        </button>
        <button type="button" className="button" onClick={() => file.current?.click()}>
          <FolderOpen size={16} aria-hidden /> {say('Open a file')}
        </button>
        <input
          ref={file}
          type="file"
          accept=".json,application/json"
          hidden
          aria-label={say('Quilt file')}
          onChange={(event) => {
            const chosen = event.target.files?.[0];
            event.target.value = '';
            if (chosen) after(session.openFile(chosen));
          }}
        />
        <button type="button" className="button" onClick={() => after(session.openNew(say('New quilt')))}>
          {say('New quilt')}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => after(session.openCopy(nameWith(open.name, say(', copy'))))}
        >
          {say('Duplicate')}
        </button>
        <button type="button" className="button" onClick={() => lookUp('keys')}>
          <Keyboard size={16} aria-hidden /> {say('Keys')}
        </button>
        <button type="button" className="button" onClick={() => lookUp('words')}>
          <BookOpen size={16} aria-hidden /> {say('Words')}
        </button>
        <button type="button" className="button" onClick={() => lookUp('licences')}>
          <Scale size={16} aria-hidden /> {say('Licences')}
        </button>
      </div>
      <Saved words={saved} />
      {reading ? (
        <p className="row" role="status">
          {say('Reading the file …')}
          <button type="button" className="button" onClick={reading.stop}>
            {say('Stop')}
          </button>
        </p>
      ) : null}
      <Refusals problems={problems} />
      <KeptQuilts
        projects={projects.filter((project) => project.id !== open.id)}
        onOpen={(id) => after(session.openKept(id))}
        onRemove={(id) => void session.remove(id).then(setProblems)}
      />
      <Examples onOpen={(demo) => after(session.openDemo(demo))} />
    </div>
  );
}
