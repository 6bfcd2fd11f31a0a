// Blocks from a list, one to the line: read as it is typed, with every fault by line and place, seen before they are entered.
import { useDeferredValue, useId, useMemo } from 'react';
import { drawBlock } from '../../../../drawing/drawProject';
import { type ListedBlock, readBlockList, writeBlockList } from '../../../../editing/entering/blockList';
import { enterBlocks, shortPlaces, supplyOf } from '../../../../editing/entering/enterBlocks';
import { createBlock } from '../../../../model/create';
import { findSet } from '../../../../model/find';
import { counted, type Phrase, phrase } from '../../../../model/phrase';
import type { Block, Project } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { PROGRESS_NAMES } from '../../../steps/blocks/blockWords';
import { useSay } from '../../../words';
import { BlockCard } from '../BlockCard';
import { useEntering } from './useEntering';

const NO_CLASHES: readonly never[] = [];
const FEW = 12;

interface Fault {
  readonly line: number;
  readonly place: number | null;
  readonly message: Phrase;
}

export function ByList() {
  const say = useSay();
  const store = useAppStore();
  const id = useId();
  const project = useApp((app) => app.project);
  const [{ text, progress }, change] = useEntering();
  const [run, problems, clear] = useRun();
  const names = useMemo(
    () => ({
      planned: say(PROGRESS_NAMES.planned),
      octagon: say(PROGRESS_NAMES.octagon),
      squared: say(PROGRESS_NAMES.squared),
      joined: say(PROGRESS_NAMES.joined),
    }),
    [say],
  );
  const wanted = useDeferredValue(text);
  const { blocks, problems: faults } = useMemo(
    () => readBlockList(project, wanted, progress, names),
    [project, wanted, progress, names],
  );
  const { given, short } = useMemo(() => supplyOf(project, blocks), [project, blocks]);
  const lacking = shortPlaces(blocks, short);
  const counts = short.map(({ set, tip, needed }) => ({ set, tip, count: needed }));
  const lacks = blocks.flatMap(({ line, places }, at) =>
    [...lacking[at]!].map((place): Fault => {
      const wedge = places[place]!;
      const set = findSet(project, wedge.set)?.label ?? '';
      return {
        line,
        place: place + 1,
        message: phrase(
          wedge.tip === 'up'
            ? 'set {set} has no wedge tip up left.'
            : 'set {set} has no wedge tip down left.',
          { set },
        ),
      };
    }),
  );
  const enter = (corrected: boolean) => {
    if (run(enterBlocks(project, blocks, corrected ? counts : []))) change({ text: '' });
  };
  const ready = blocks.length > 0 && faults.length === 0;
  const enterName = counted(blocks.length, 'Enter 1 block', 'Enter {count} blocks');
  return (
    <div className="by-list">
      <div className="sheet-of-paper stack">
        <div className="field">
          <label htmlFor={id}>
            {say('One block per line, clockwise from place 1 at the top: {example}', {
              example: example(project.wedge.perBlock),
            })}
          </label>
          <textarea
            id={id}
            rows={10}
            spellCheck={false}
            autoComplete="off"
            autoCapitalize="characters"
            dir="ltr"
            value={text}
            aria-invalid={faults.length > 0}
            aria-describedby={`${id}-faults`}
            onChange={(event) => {
              clear();
              change({ text: event.target.value });
            }}
          />
        </div>
        <p className="quiet">
          {say(
            'Au and Ad work like A↑ and A↓. A number and a colon before the wedges name the block; – is an empty place. Progress goes in brackets at the end, where it differs from the one chosen above.',
          )}
        </p>
        <div id={`${id}-faults`} role="status" className="stack">
          <Faults faults={faults} title={phrase('These lines cannot be read:')} />
          {faults.length === 0 ? (
            <Faults faults={lacks} title={phrase('The sets have too few wedges for:')} />
          ) : null}
          {given.length > 0 ? (
            <p className="quiet">
              {say(
                counted(
                  given.length,
                  'One wedge comes out of a planned block.',
                  '{count} wedges come out of planned blocks.',
                ),
              )}
            </p>
          ) : null}
        </div>
        <Complaint problems={problems} />
        <div className="row">
          {short.length > 0 ? (
            <button type="button" className="button solid" disabled={!ready} onClick={() => enter(true)}>
              {say('The sets gave more: correct the counts and enter')}
            </button>
          ) : (
            <button
              type="button"
              className="button solid"
              data-once
              disabled={!ready}
              onClick={() => enter(false)}
            >
              {say(enterName)}
            </button>
          )}
          {text === '' && project.blocks.length > 0 ? (
            <button
              type="button"
              className="button"
              onClick={() => change({ text: writeBlockList(store.getState().project, names) })}
            >
              {say('List the blocks entered so far')}
            </button>
          ) : null}
        </div>
      </div>
      {blocks.length > 0 ? (
        <ul className="block-list" aria-label={say('Blocks read from the list')}>
          {blocks.map((one) => {
            const block = shownBlock(project, one);
            return (
              <li key={one.line}>
                <BlockCard
                  block={block}
                  pieces={drawBlock(project, block)}
                  fabrics={project.fabrics}
                  wedge={project.wedge}
                  turn={0}
                  clashes={NO_CLASHES}
                  marked={null}
                  onPress={null}
                />
              </li>
            );
          })}
        </ul>
      ) : null}
    </div>
  );
}

function shownBlock(project: Project, { number, places, progress }: ListedBlock): Block {
  return { ...createBlock(project), number: number ?? 1, places: [...places], progress };
}

function Faults({ faults, title }: { faults: readonly Fault[]; title: Phrase }) {
  const say = useSay();
  if (faults.length === 0) return null;
  return (
    <div className="faults">
      <p>{say(title)}</p>
      <ul className="marked">
        {faults.slice(0, FEW).map(({ line, place, message }) => (
          <li key={`${line} ${place} ${message.say}`}>
            {place === null
              ? say('Line {line}:', { line })
              : say('Line {line}, place {place}:', { line, place })}{' '}
            <Fractions text={say(message)} />
          </li>
        ))}
      </ul>
      {faults.length > FEW ? (
        <p className="quiet">{say('And {count} more.', { count: faults.length - FEW })}</p>
      ) : null}
    </div>
  );
}

function example(perBlock: number): string {
  return Array.from({ length: perBlock }, (_, at) => `${'ACBE'[at % 4]}${at % 2 === 0 ? '↑' : '↓'}`).join(
    ' ',
  );
}
