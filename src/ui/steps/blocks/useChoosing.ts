// Runs the automatic choice of wedges and keeps what it proved until the project changes again.
import { useState } from 'react';
import type { Phrase } from '../../../model/phrase';
import type { BlockId, Project } from '../../../model/project';
import { chooseWedges } from '../../../store/composing';
import { useApp, useAppStore } from '../../app';
import { useRun } from '../../fields/Complaint';

export function useChoosing() {
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const kept = useApp((app) => app.project.preferences.seed);
  const [run, problems] = useRun();
  const [typed, setTyped] = useState<number | null>(null);
  const [said, setSaid] = useState<{ project: Project; words: readonly Phrase[] } | null>(null);
  const seed = typed ?? kept;
  const choose = (blocks: readonly BlockId[], with_: number = seed) => {
    const { command, words } = chooseWedges(store.getState().project, blocks, with_);
    if (!run(command)) return;
    setTyped(null);
    setSaid({ project: store.getState().project, words });
  };
  return {
    choose,
    seed,
    setSeed: setTyped,
    /** Empty once anything has changed since. */
    words: said?.project === project ? said.words : [],
    problems,
  };
}
