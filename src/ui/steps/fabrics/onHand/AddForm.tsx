// A form that adds cloth or strips of one fabric to a list: the fabric, its fields, and the reason of a refusal.
import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { Command } from '../../../../editing/apply';
import { phrase } from '../../../../model/phrase';
import type { FabricId, Project } from '../../../../model/project';
import type { Problem } from '../../../../model/result';
import { useApp, useAppStore } from '../../../app';
import { Apart } from '../../../fields/Apart';
import { Complaint } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';

interface Props {
  title: string;
  /** Words of the button. */
  adds: string;
  /** Words shown when no fabric is chosen. */
  noFabric: string;
  fabric: FabricId | null;
  onFabric: (fabric: FabricId) => void;
  takesFocus: boolean;
  command: (project: Project, fabric: FabricId) => Command;
  onClose: () => void;
  children: ReactNode;
}

export function AddForm({ title, adds, noFabric, fabric, onFabric, takesFocus, ...props }: Props) {
  const say = useSay();
  useEscape(props.onClose);
  const store = useAppStore();
  const form = useRef<HTMLFormElement>(null);
  // The fabric of a kept draft may have been removed since.
  const known = useApp((app) => app.project.fabrics.some((one) => one.id === fabric)) ? fabric : null;
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  useEffect(() => {
    if (takesFocus) form.current?.querySelector('button')?.focus();
  }, [takesFocus]);
  const add = () => {
    const { project, run } = store.getState();
    setProblems(
      known === null
        ? [{ code: 'no-fabric', path: 'fabric', message: phrase(noFabric) }]
        : run(props.command(project, known)),
    );
  };
  return (
    <form
      ref={form}
      className="stack fab-open fab-new"
      aria-label={say(title)}
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <FabricPicker
        label="Fabric"
        value={known}
        onChange={(chosen) => {
          onFabric(chosen);
          setProblems([]);
        }}
      />
      {props.children}
      <Complaint problems={problems} />
      <div className="row">
        <button data-once type="submit" className="button solid">
          {say(adds)}
        </button>
        <button type="button" className="button" onClick={props.onClose}>
          {say('Done')}
          <Apart of={say(title)} />
        </button>
      </div>
    </form>
  );
}
