// The bar over the wall: menu of quilts, undo and redo in words, and how the wall is seen.
import { Contrast, Eye, Hash, Redo2, Ruler, TriangleAlert, Undo2 } from 'lucide-react';
import type { ReactNode } from 'react';
import { nextLabels } from '../../editing/history';
import { useApp, useAppStore } from '../app';
import { Hint } from '../fields/Hint';
import { Toolbar } from '../fields/Toolbar';
import { later } from '../later';
import { PopupButton } from '../popup/PopupButton';
import { Shown } from '../Shown';
import { seeAs, WAY_WORDS } from '../seeing/ways';
import { useSessionState } from '../session';
import { useSay } from '../words';
import type { Help } from './help/help';
import { ProjectMenu } from './ProjectMenu';
import type { SettingsOf } from './WallSettings';

const NOTICE = later(async () => (await import('./notice/SavingNotice')).SavingNotice);
const SETTINGS = later(async () => (await import('./WallSettings')).WallSettings);

interface Props {
  number: boolean;
  onNumber: (shown: boolean) => void;
  /** Opens the list of keys. */
  onHelp: (help: Help) => void;
}

export function TopBar({ number, onNumber, onHelp }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project.name);
  const history = useApp((app) => app.history);
  const look = useApp((app) => app.look);
  const way = say(WAY_WORDS[look.way].name);
  const labels = nextLabels(history);
  const notice = useSessionState(
    ({ problem, conflict, told, lasting }) => problem || conflict || lasting || told.length > 0,
  );
  const undoName = labels.undo ? say('Undo: {change}', { change: labels.undo }) : say('Nothing to undo');
  const redoName = labels.redo ? say('Redo: {change}', { change: labels.redo }) : say('Nothing to redo');
  return (
    <header className="top-bar">
      <h1 className="hidden-text">{project || say('Untitled quilt')}</h1>
      <ProjectMenu onHelp={onHelp} />
      <Toolbar className="row history" aria-label={say('Undo and redo')}>
        <Hint words={undoName}>
          <button
            type="button"
            className="button bare"
            aria-disabled={!labels.undo}
            aria-label={undoName}
            onClick={() => store.getState().undo()}
          >
            <Undo2 size={18} aria-hidden />
            <span className="words" aria-hidden>
              {labels.undo ? undoName : ''}
            </span>
          </button>
        </Hint>
        <Hint words={redoName}>
          <button
            type="button"
            className="button bare"
            aria-disabled={!labels.redo}
            aria-label={redoName}
            onClick={() => store.getState().redo()}
          >
            <Redo2 size={18} aria-hidden />
          </button>
        </Hint>
      </Toolbar>
      <Toolbar className="row looks" aria-label={say('How the wall is shown')}>
        <Toggle
          word={say('Grey')}
          name={say('Grey: see values without colour')}
          pressed={look.way === 'grey'}
          onPress={() => seeAs(store.getState(), look.way === 'grey' ? 'colour' : 'grey')}
        >
          <Contrast size={18} aria-hidden />
        </Toggle>
        <Toggle
          word={say('Clashes')}
          name={say('Clashes: mark them on the wall')}
          pressed={look.marks}
          onPress={() => store.getState().lookAt({ marks: !look.marks })}
        >
          <TriangleAlert size={18} aria-hidden />
        </Toggle>
        <Toggle
          word={say('Numbers')}
          name={say('Numbers: show them on the blocks')}
          pressed={number}
          onPress={() => onNumber(!number)}
        >
          <Hash size={18} aria-hidden />
        </Toggle>
        <Settings
          className="apart"
          word={look.way === 'colour' || look.way === 'grey' ? say('Ways of seeing') : way}
          name={say('Ways of seeing: {way}', { way })}
          of="seeing"
        >
          {EYE}
        </Settings>
        <Settings className="apart" word={say('Units')} name={say('Units of lengths')} of="units">
          {RULER}
        </Settings>
        <Settings
          className="together"
          word={say('Ways of seeing and units')}
          name={say('Ways of seeing and units: {way}', { way })}
          of="both"
        >
          {EYE}
        </Settings>
      </Toolbar>
      {notice ? <Shown part={NOTICE} given={{}} over /> : null}
    </header>
  );
}

const RULER = <Ruler size={18} aria-hidden />;
const EYE = <Eye size={18} aria-hidden />;

interface ToolProps {
  /** Shown beside the icon where there is room; part of the name. */
  word: string;
  name: string;
  children: ReactNode;
}

function Toggle({
  word,
  name,
  pressed,
  onPress,
  children,
}: ToolProps & { pressed: boolean; onPress: () => void }) {
  return (
    <Hint words={name}>
      <button
        type="button"
        className="button bare"
        aria-pressed={pressed}
        aria-label={name}
        onClick={onPress}
      >
        {children}
        <span className="words" aria-hidden>
          {word}
        </span>
      </button>
    </Hint>
  );
}

/** A button that opens a few settings. */
function Settings({
  word,
  name,
  of,
  className,
  children,
}: ToolProps & { of: SettingsOf; className: string }) {
  return (
    <PopupButton className={`button bare ${className}`} name={name} hinted part={SETTINGS} given={{ of }}>
      {children}
      <span className="words" aria-hidden>
        {word}
      </span>
    </PopupButton>
  );
}
