// Runs the automatic choice of wedges and keeps the words on what it proved until the project changes.
import { useState } from 'react';
import type { Command } from '../../../editing/apply';
import {
  addFilledBlocks,
  type Choosing,
  chooseWedges,
  fillEmpty,
} from '../../../editing/commands/chooseWedges';
import { type Phrase, phrase } from '../../../model/phrase';
import type { BlockId, Project } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { useRun } from '../../fields/Complaint';

const CHOOSING: readonly Phrase[] = [phrase('Choosing wedges …')];

/** The state of the automatic choice, and a function that runs it. */
export function useChoosing() {
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const kept = useApp((app) => app.project.preferences.seed);
  const [run, problems] = useRun();
  const [typed, setTyped] = useState<number | null>(null);
  const [said, setSaid] = useState<{ project: Project; words: readonly Phrase[] } | null>(null);
  const seed = typed ?? kept;
  const [busy, setBusy] = useState(false);
  const take = (make: (project: Project) => Choosing<Command>) => {
    setBusy(true);
    // On a large wall this takes a moment, so the screen first says that it runs.
    setTimeout(() => {
      const { command, words } = make(store.getState().project);
      setBusy(false);
      if (!run(command)) return;
      setTyped(null);
      setSaid({ project: store.getState().project, words });
    }, 40);
  };
  return {
    choose: (blocks: readonly BlockId[]) => take((now) => chooseWedges(now, blocks, seed)),
    fill: () => take((now) => fillEmpty(now, seed)),
    add: (count: number) => take((now) => addFilledBlocks(now, count, seed)),
    seed,
    setSeed: setTyped,
    /** Words on the last choice; empty once the project has changed. */
    words: busy ? CHOOSING : said?.project === project ? said.words : [],
    busy,
    problems,
  };
}
