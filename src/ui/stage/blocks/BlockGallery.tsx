// The gallery of blocks at a size at which their cloth can be judged, each with its number and state. It can be searched by number, set or
// fault, and many blocks can be marked to update their progress at once.
import { Camera, Keyboard } from 'lucide-react';
import { useCallback, useDeferredValue, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Clash } from '../../../balance/clashes/clashes';
import { drawBlock } from '../../../drawing/drawProject';
import { cellOf } from '../../../model/find';
import type { Block, BlockId, Project } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Choice } from '../../fields/Choice';
import { HowFar } from '../../steps/blocks/HowFar';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import { BlockCard } from './BlockCard';
import { MarkRow } from './MarkRow';

type Show = 'all' | 'open' | 'meeting';
const NONE: readonly Clash[] = [];
const FIRST = 24;

export function BlockGallery({ clashes }: { clashes: ReadonlyMap<BlockId, readonly Clash[]> }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [sought, setSought] = useState('');
  const [show, setShow] = useState<Show>('all');
  const [marking, setMarking] = useState(false);
  const [marked, setMarked] = useState<ReadonlySet<BlockId>>(new Set());
  const last = useRef<BlockId | null>(null);
  const mark = (on: boolean) => {
    setMarking(on);
    setMarked(new Set());
  };
  useEscape(() => mark(false), marking);
  const wanted = useDeferredValue(sought);
  const found = useMemo(
    () =>
      project.blocks
        .filter(
          (block) => shows(show, block, clashes.get(block.id) ?? NONE) && matches(project, block, wanted),
        )
        .sort((one, other) => one.number - other.number),
    [project, clashes, show, wanted],
  );
  // The first screenful is drawn at once, the rest when there is time, because 400 blocks take long to lay out.
  const drawn = useDeferredValue(found, found.slice(0, FIRST));
  const order = useRef(found);
  useLayoutEffect(() => {
    order.current = found;
  }, [found]);
  const press = useCallback(
    (id: BlockId, range: boolean) => {
      if (!marking) {
        store.getState().pick(id);
        return;
      }
      const from = range && last.current ? last.current : id;
      const ids = between(order.current, from, id);
      last.current = id;
      setMarked((before) => {
        const next = new Set(before);
        const adds = !before.has(id);
        for (const one of ids) {
          if (adds) next.add(one);
          else next.delete(one);
        }
        return next;
      });
    },
    [marking, store],
  );
  const chosen = project.blocks.filter((block) => marked.has(block.id));
  const stages = new Set(chosen.map((block) => block.progress));
  const enter = (
    <button
      type="button"
      className="button"
      aria-label={say('Enter sewn blocks')}
      onClick={() => store.getState().lay({ entering: 'keys', into: null })}
    >
      <Keyboard size={16} aria-hidden />
      <span className="wide">{say('Enter sewn blocks')}</span>
      <span className="slim">{say('Enter sewn')}</span>
    </button>
  );
  const photograph = (
    <button
      type="button"
      className="button"
      aria-label={say('From a photograph')}
      onClick={() => store.getState().lay({ photoBlocks: true })}
    >
      <Camera size={16} aria-hidden />
      <span className="wide">{say('From a photograph')}</span>
      <span className="slim">{say('Photograph')}</span>
    </button>
  );
  if (project.blocks.length === 0) {
    return (
      <section className="sheet-of-paper no-blocks" aria-labelledby="list-title">
        <h2 id="list-title">{say('No blocks yet')}</h2>
        <p>
          {say(
            'Add blocks in the panel. If you have sewn some already, enter them wedge by wedge, as a list, or from photographs.',
          )}
        </p>
        <div className="row">
          {enter}
          {photograph}
        </div>
      </section>
    );
  }
  return (
    <section aria-labelledby="list-title">
      <h2 id="list-title" className="hidden-text">
        {say('All blocks')}
      </h2>
      <div className="gallery-tools sheet-of-paper">
        {project.blocks.length > 8 ? (
          <div className="field find">
            <label htmlFor="find-block" className="hidden-text">
              {say('Find by number, or by set letter')}
            </label>
            <input
              id="find-block"
              type="search"
              autoComplete="off"
              placeholder={say('Number or set letter')}
              value={sought}
              onChange={(event) => setSought(event.target.value)}
            />
          </div>
        ) : null}
        <Choice
          label="Which blocks are shown"
          hideLabel
          value={show}
          options={[
            { value: 'all', label: 'All' },
            { value: 'open', label: 'Not filled' },
            { value: 'meeting', label: 'Clashing' },
          ]}
          onChange={setShow}
        />
        <div className="row">
          <button
            type="button"
            className="button"
            aria-pressed={marking}
            aria-label={marking ? say('Done') : say('Update progress')}
            onClick={() => mark(!marking)}
          >
            {marking ? (
              say('Done')
            ) : (
              <>
                <span className="wide">{say('Update progress')}</span>
                <span className="slim">{say('Progress')}</span>
              </>
            )}
          </button>
          {enter}
          {photograph}
        </div>
        {marking ? (
          <div className="marking">
            <p>{say('Press blocks to choose them; Shift chooses all between two.')}</p>
            <div className="row">
              <button
                type="button"
                className="button"
                onClick={() => setMarked(new Set(found.map((block) => block.id)))}
              >
                {say('Choose all shown')}
              </button>
              <span aria-live="polite">{say('{count} chosen', { count: marked.size })}</span>
            </div>
            <MarkRow onMark={(row) => setMarked(new Set([...marked, ...row]))} />
            <HowFar blocks={[...marked]} stage={stages.size === 1 ? chosen[0]!.progress : null} />
          </div>
        ) : null}
      </div>
      {found.length === 0 ? <p className="on-flannel">{say('No block matches.')}</p> : null}
      <ul className="block-list">
        {drawn.map((block) => (
          <li key={block.id}>
            <BlockCard
              block={block}
              pieces={drawBlock(project, block)}
              fabrics={project.fabrics}
              wedge={project.wedge}
              turn={cellOf(project, block.id)?.turn ?? 0}
              clashes={clashes.get(block.id) ?? NONE}
              marked={marking ? marked.has(block.id) : null}
              onPress={press}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

function shows(show: Show, block: Block, clashes: readonly Clash[]): boolean {
  if (show === 'open') return block.places.includes(null);
  return show === 'all' || clashes.some((clash) => clash.kind === 'rim');
}

/** Whether a block matches the search: digits match the start of its number, letters the sets of its wedges. */
function matches(project: Project, block: Block, sought: string): boolean {
  const text = sought.trim().toUpperCase();
  if (text === '') return true;
  if (/^\d+$/.test(text)) return String(block.number).startsWith(text);
  const set = project.stripSets.find((one) => one.label.toUpperCase() === text);
  return set !== undefined && block.places.some((place) => place?.set === set.id);
}

function between(order: readonly Block[], from: BlockId, to: BlockId): BlockId[] {
  const ends = [from, to].map((id) => order.findIndex((block) => block.id === id));
  if (ends.includes(-1)) return [to];
  return order.slice(Math.min(...ends), Math.max(...ends) + 1).map((block) => block.id);
}
