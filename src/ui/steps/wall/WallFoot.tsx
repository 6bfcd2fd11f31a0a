// The foot of the Wall step: begin the shuffle, see how far it is, use what it found or what is on the wall to choose, or cancel.
import { Shuffle as ShuffleIcon, Square } from 'lucide-react';
import type { ReactNode } from 'react';
import { askedOf } from '../../../arrange/search/effort';
import { weightsOf } from '../../../balance/score/wishes';
import type { Command } from '../../../editing/apply';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { ProgressBar } from '../../fields/ProgressBar';
import { useHandMoves, useSeeking, useShuffling } from '../../session';
import { LAYOUT_LABEL } from '../../stage/wall/layouts';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import { StepFoot } from '../StepFoot';
import { searchedShare, shuffleNews } from './shuffle/shuffleNews';
import { whyNoShuffle } from './shuffle/whyNoShuffle';

export function WallFoot() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const store = useAppStore();
  const preview = useApp((app) => app.preview);
  const sizesOffered = useApp((app) => app.laid.sizes !== null);
  const { shuffle, start, stop, leave } = useShuffling();
  const seeking = useSeeking();
  const handMoves = useHandMoves();
  useEscape(leave, shuffle.kind === 'done');
  if (shuffle.kind === 'running') {
    return (
      <StepFoot>
        <Progress label={say('Shuffling')} share={searchedShare(shuffle.progress)} onStop={stop}>
          <ShuffleNews />
        </Progress>
      </StepFoot>
    );
  }
  if (shuffle.kind === 'proving') {
    return (
      <StepFoot>
        <Progress label={say('Searching all layouts')} share={shuffle.progress?.share ?? 0} onStop={stop}>
          {shuffle.progress
            ? say(
                'At most {points} points above the best possible, {from} at the start. Stop when you like and go on later.',
                { points: shuffle.progress.points, from: shuffle.progress.from },
              )
            : say('Starting …')}
        </Progress>
      </StepFoot>
    );
  }
  if (seeking.state.kind === 'running') {
    return (
      <StepFoot>
        <Progress
          label={say('Looking for layouts that differ')}
          share={seeking.state.share}
          onStop={seeking.stop}
        >
          {say('Looking for layouts that differ …')}
        </Progress>
      </StepFoot>
    );
  }
  if (handMoves.state.kind === 'running') {
    return (
      <StepFoot>
        <Progress label={say('Looking for the moves')} share={handMoves.state.share} onStop={handMoves.stop}>
          {say('Looking for what a few moves can do …')}
        </Progress>
      </StepFoot>
    );
  }
  if (shuffle.kind === 'done') {
    return (
      <StepFoot>
        <UseOrCancel command={shuffle.keep} leave={shuffle.keep ? 'Cancel' : 'Close'} onDone={leave} />
      </StepFoot>
    );
  }
  if (seeking.state.kind === 'offered') {
    const shown = preview?.command.label === LAYOUT_LABEL ? preview.command : null;
    return (
      <StepFoot>
        <UseOrCancel command={shown} leave="Cancel" onDone={seeking.close} />
      </StepFoot>
    );
  }
  if (sizesOffered) {
    // Each size has its own Use on the large area.
    return (
      <StepFoot>
        <UseOrCancel command={null} leave="Cancel" onDone={() => store.getState().lay({ sizes: null })} />
      </StepFoot>
    );
  }
  return (
    <StepFoot>
      <button
        type="button"
        className="button solid"
        disabled={whyNoShuffle(project) !== null}
        onClick={start}
      >
        <ShuffleIcon size={16} aria-hidden /> {say('Shuffle')}
      </button>
    </StepFoot>
  );
}

function Progress(props: { label: string; share: number | null; onStop: () => void; children: ReactNode }) {
  const say = useSay();
  const { label, share, onStop, children } = props;
  return (
    <div className="foot-progress">
      <ProgressBar label={label} share={share} />
      <p className="quiet">{children}</p>
      <button type="button" className="button" onClick={onStop}>
        <Square size={14} aria-hidden /> {say('Stop')}
      </button>
    </div>
  );
}

function ShuffleNews() {
  const say = useSay();
  const preferences = useApp((app) => app.project.preferences);
  const { shuffle } = useShuffling();
  const progress = shuffle.kind === 'running' ? shuffle.progress : null;
  const { trade, strips } = askedOf(preferences).scopes;
  return say(shuffleNews(progress, weightsOf(preferences), trade || strips));
}

/** Use the layout that the wall shows, or cancel. Without one there is nothing to use. */
function UseOrCancel(props: { command: Command | null; leave: 'Cancel' | 'Close'; onDone: () => void }) {
  const { command, leave, onDone } = props;
  const say = useSay();
  const [run, problems] = useRun();
  return (
    <>
      {command ? (
        <button
          type="button"
          className="button solid"
          onClick={() => {
            if (run(command)) onDone();
          }}
        >
          {say('Use this layout')}
        </button>
      ) : null}
      <button data-always type="button" className="button" onClick={onDone}>
        {say(leave)}
      </button>
      <Complaint problems={problems} />
    </>
  );
}
