// The bar over the wall: menu of quilts, undo and redo in words, and the view of the wall.
import { Contrast, Hash, Redo2, TriangleAlert, Undo2 } from 'lucide-react';
import { Button, DialogTrigger, Popover } from 'react-aria-components';
import { changePreferences } from '../../editing/commands/setting';
import { nextLabels } from '../../editing/history';
import { useApp, useAppStore } from '../app';
import { Choice } from '../fields/Choice';
import { useSay } from '../words';
import { ProjectMenu } from './ProjectMenu';

interface Props {
  number: boolean;
  onNumber: (shown: boolean) => void;
}

export function TopBar({ number, onNumber }: Props) {
  const say = useSay();
  const store = useAppStore();
  const history = useApp((app) => app.history);
  const look = useApp((app) => app.look);
  const labels = nextLabels(history);
  const undoName = labels.undo ? say('Undo: {change}', { change: labels.undo }) : say('Nothing to undo');
  const redoName = labels.redo ? say('Redo: {change}', { change: labels.redo }) : say('Nothing to redo');
  return (
    <header className="top-bar">
      <ProjectMenu />
      <div className="row history" role="toolbar" aria-label={say('Undo and redo')}>
        <button
          type="button"
          className="button bare"
          disabled={!labels.undo}
          title={undoName}
          aria-label={undoName}
          onClick={() => store.getState().undo()}
        >
          <Undo2 size={18} aria-hidden />
          <span className="words" aria-hidden>
            {labels.undo ? undoName : ''}
          </span>
        </button>
        <button
          type="button"
          className="button bare"
          disabled={!labels.redo}
          title={redoName}
          aria-label={redoName}
          onClick={() => store.getState().redo()}
        >
          <Redo2 size={18} aria-hidden />
        </button>
      </div>
      <div className="row looks" role="toolbar" aria-label={say('How the wall is looked at')}>
        <Toggle
          name={say('Grey picture: values without colour')}
          pressed={look.grey}
          onPress={() => store.getState().lookAt({ grey: !look.grey })}
        >
          <Contrast size={18} aria-hidden />
        </Toggle>
        <Toggle
          name={say('Mark what clashes')}
          pressed={look.marks}
          onPress={() => store.getState().lookAt({ marks: !look.marks })}
        >
          <TriangleAlert size={18} aria-hidden />
        </Toggle>
        <Toggle name={say('Block numbers')} pressed={number} onPress={() => onNumber(!number)}>
          <Hash size={18} aria-hidden />
        </Toggle>
        <FlannelSetting />
      </div>
    </header>
  );
}

function Toggle(props: { name: string; pressed: boolean; onPress: () => void; children: React.ReactNode }) {
  return (
    <button
      type="button"
      className="button bare"
      aria-pressed={props.pressed}
      aria-label={props.name}
      title={props.name}
      onClick={props.onPress}
    >
      {props.children}
    </button>
  );
}

/** The lightness of the flannel and the unit of lengths. */
function FlannelSetting() {
  const say = useSay();
  const store = useAppStore();
  const { wallLightness, unit } = useApp((app) => app.project.preferences);
  return (
    <DialogTrigger>
      <Button className="button bare" aria-label={say('Flannel and units')}>
        <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden>
          <rect x="1" y="1" width="16" height="16" rx="2" fill="var(--flannel)" stroke="currentColor" />
        </svg>
      </Button>
      <Popover className="popover" placement="bottom end">
        <div className="stack" style={{ width: 250, padding: 6 }}>
          <label className="field">
            <span className="label">
              {say('Lightness of the wall: {value}', { value: Math.round(wallLightness) })}
            </span>
            <input
              type="range"
              min={15}
              max={95}
              value={wallLightness}
              style={{ accentColor: 'var(--solid)', padding: 0 }}
              onChange={(event) =>
                store.getState().run(changePreferences({ wallLightness: Number(event.target.value) }, true))
              }
            />
          </label>
          <Choice
            label="Lengths in"
            value={unit}
            options={[
              { value: 'in', label: 'inches' },
              { value: 'cm', label: 'centimetres' },
            ]}
            onChange={(next) => store.getState().run(changePreferences({ unit: next }))}
          />
        </div>
      </Popover>
    </DialogTrigger>
  );
}
