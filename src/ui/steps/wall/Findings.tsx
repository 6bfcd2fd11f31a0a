// The list of findings, heaviest first, each with its measure and ways to mend it.
import { useState } from 'react';
import type { Clash } from '../../../balance/clashes/clashes';
import { hasWedges } from '../../../model/find';
import { counted, type Phrase } from '../../../model/phrase';
import type { Balance } from '../../../store/analysis/analysis';
import { useApp, useAppStore } from '../../app';
import { useAnalysis } from '../../useAnalysis';
import { useSay } from '../../words';
import { ClashList } from './ClashList';
import { EachFabric } from './EachFabric';
import { FindingRow } from './FindingRow';
import { TopEvenness } from './TopEvenness';
import { WhatCounts } from './WhatCounts';

const FIRST = 8;
const NOTHING: Pick<Balance, 'findings' | 'clashes'> = { findings: [], clashes: [] };

export function Findings() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const chosen = useApp((app) => app.finding);
  const { balance, pending, reason } = useAnalysis(project);
  const { findings, clashes } = balance ?? NOTHING;
  const told = new Set(findings.flatMap((finding) => finding.clashes));
  const slighter = clashes.filter((clash) => !told.has(clash.id));
  const [all, setAll] = useState(false);
  const shown = all ? findings : findings.slice(0, FIRST);
  const hung = project.wall.cells.some((cell) => cell !== null);
  const bare = hung && !hasWedges(project);
  // That nothing clashed before says nothing of other blocks.
  const other = balance?.project.blocks !== project.blocks;
  const open = balance === null || (other && hung && !bare && findings.length === 0);
  return (
    <section aria-label={say('What clashes')} aria-busy={pending}>
      {reason === null ? null : (
        <p className="complaint" role="alert">
          {say('What clashes could not be worked out: {reason}. The quilt itself is as it was.', { reason })}
        </p>
      )}
      <h3>
        {open
          ? say(pending ? 'Looking the quilt over …' : 'What clashes')
          : findings.length === 0
            ? say(
                bare
                  ? 'The blocks have no wedges yet'
                  : hung
                    ? slighter.length === 0
                      ? 'Nothing clashes'
                      : 'Nothing pulls the eye'
                    : 'Nothing hangs yet',
              )
            : say(findings.length === 1 ? 'One thing to look at' : '{count} things to look at', {
                count: findings.length,
              })}
        {pending && !open ? <small className="looking-again quiet"> {say('looking again …')}</small> : null}
      </h3>
      {!open && findings.length === 0 ? (
        <p className="quiet">
          {say(
            bare
              ? 'Choose wedges for them under Blocks; then what clashes is told here.'
              : hung
                ? slighter.length === 0
                  ? 'No fabric meets itself anywhere, and no part of the top is lighter or darker than in a random layout. Step back and squint all the same.'
                  : 'Where a fabric meets itself it is short, or inside a block; no part of the top is lighter or darker than in a random layout. Step back and squint all the same.'
                : 'Make blocks, then hang them here.',
          )}
        </p>
      ) : null}
      <ul className="findings">
        {shown.map((finding) => (
          <FindingRow
            key={finding.id}
            finding={finding}
            balance={balance}
            open={finding.id === chosen}
            onOpen={() => {
              const app = store.getState();
              app.showPreview(null);
              app.showFinding(finding.id === chosen ? null : finding.id);
            }}
          >
            {balance && finding.clashes.length > 1 ? (
              <ClashList
                title={say('Each of the {count}', { count: finding.clashes.length })}
                clashes={clashes.filter((clash) => finding.clashes.includes(clash.id))}
                balance={balance}
                below
              />
            ) : null}
          </FindingRow>
        ))}
      </ul>
      {findings.length > FIRST ? (
        <button type="button" className="button" style={{ marginTop: 8 }} onClick={() => setAll(!all)}>
          {all ? say('Show the worst') : say('Show all {count}', { count: findings.length })}
        </button>
      ) : null}
      {balance && slighter.length > 0 ? (
        <ClashList title={say(slighterWords(slighter))} clashes={slighter} balance={balance} below={false} />
      ) : null}
      {hung ? (
        <div className="folds">
          <WhatCounts clashes={clashes} />
          <EachFabric />
          <TopEvenness />
        </div>
      ) : null}
    </section>
  );
}

/** The clashes that are part of no finding, in one sentence. */
function slighterWords(clashes: readonly Clash[]): Phrase {
  const within = clashes.every((clash) => clash.kind === 'radial');
  const values = { length: { inches: clashes.reduce((sum, clash) => sum + clash.inches, 0) } };
  return within
    ? counted(
        clashes.length,
        'Inside blocks the same fabric or its look-alike touches once, along {length}',
        'Inside blocks the same fabric or its look-alike touches {count} times, {length} in all',
        values,
      )
    : counted(
        clashes.length,
        'Smaller: a fabric meets itself or its look-alike once more, along {length}',
        'Smaller, or inside blocks: a fabric meets itself or its look-alike {count} times more, {length} in all',
        values,
      );
}
