// The new fabrics as a table, one row a frame: its picture, name, and what kind of fabric it is. All are added in one change.
import { Check, Trash2 } from 'lucide-react';
import { phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { isDirectional, type Patch } from '../../../../store/photo/patches';
import { useApp, useAppStore } from '../../../app';
import { Complaint } from '../../../fields/Complaint';
import { TextField } from '../../../fields/TextField';
import { useSay } from '../../../words';
import { useTileFill } from './Sample';
import { useSitting, useSittingState } from './sitting';
import type { NewRow } from './useNewFabrics';
import { useNewFabrics } from './useNewFabrics';

export function NewFabrics() {
  const say = useSay();
  const { rows, add, problems, busy } = useNewFabrics();
  const replacing = useReplaced();
  return (
    <section className="photo-new stack" aria-label={say('New fabrics')}>
      <h3>{say(replacing ? 'The fabric' : 'New fabrics')}</h3>
      <ul>
        {rows.map((row) => (
          <Row key={row.patch.key} row={row} named={!replacing} refused={problems.get(row.patch) ?? []} />
        ))}
      </ul>
      <Complaint problems={problems.get(null) ?? []} />
      <div className="row">
        <button
          data-once
          type="button"
          className="button solid"
          aria-disabled={busy}
          onClick={() => {
            if (!busy) void add();
          }}
        >
          <Check size={16} aria-hidden />{' '}
          {replacing
            ? say('Use for {name}', { name: replacing.name })
            : rows.length > 1
              ? say('Add {count} fabrics', { count: rows.length })
              : say('Add this fabric')}
        </button>
      </div>
    </section>
  );
}

/** Whether a print is directional as the tool proposes, and nobody has said. */
function looksDirectional(patch: Patch): boolean {
  return patch.oneWay === null && isDirectional(patch);
}

/** The fabric that is to look like the photograph; undefined where new ones are made. */
function useReplaced() {
  const replacing = useSittingState((state) => state.replacing);
  return useApp((app) => app.project.fabrics.find(({ id }) => id === replacing));
}

function Row({ row, named, refused }: { row: NewRow; named: boolean; refused: readonly Problem[] }) {
  const say = useSay();
  const sitting = useSitting();
  const store = useAppStore();
  const shown = useSittingState((state) => state.current === row.photo.file.key);
  const { photo, patch, name, likeness } = row;
  const [of, key] = [photo.file.key, patch.key];
  const to = (change: Partial<Patch>) => sitting.editPatch(of, key, change);
  const why = refused.length > 0 ? refused : patch.problems;
  return (
    <li className={shown && photo.patch === key ? 'in-hand' : undefined}>
      <button
        type="button"
        className="photo-thumb"
        aria-label={say('Show the frame of {name}', { name })}
        onClick={() => {
          sitting.show(of);
          sitting.edit(of, () => ({ patch: key }));
        }}
      >
        {patch.read ? <Thumb read={patch.read} /> : <span>{say('…')}</span>}
      </button>
      {named ? (
        <TextField
          label="Name"
          value={name}
          onCommit={(typed) => {
            to({ name: typed });
            return [];
          }}
        />
      ) : (
        <p>{name}</p>
      )}
      {named ? (
        <div className="photo-kinds">
          <label className="check">
            <input
              type="checkbox"
              checked={patch.background}
              onChange={(event) => to({ background: event.target.checked })}
            />
            <span>{say('Background')}</span>
          </label>
          <label className="check">
            <input
              type="checkbox"
              checked={isDirectional(patch)}
              onChange={(event) => to({ oneWay: event.target.checked })}
            />
            <span>
              {say(looksDirectional(patch) ? 'Directional print, by its look' : 'Directional print')}
            </span>
          </label>
        </div>
      ) : null}
      <button
        type="button"
        className="button bare"
        aria-label={say('Leave out {name}', { name })}
        title={say('Leave out')}
        onClick={() => {
          sitting.removePatch(of, key);
          store.getState().announce(phrase('{name} is left out.', { name }));
        }}
      >
        <Trash2 size={16} aria-hidden />
      </button>
      {likeness ? (
        <p className="photo-like">{say('Look-alike: it reads as one with {name}.', { name: likeness })}</p>
      ) : null}
      <div className="photo-why">
        <Complaint problems={why} />
        {patch.problems[0]?.code === 'stopped' ? (
          <button type="button" className="button" onClick={() => sitting.readAgain(of, key)}>
            {say('Read it again')}
          </button>
        ) : null}
      </div>
    </li>
  );
}

function Thumb({ read }: { read: NonNullable<Patch['read']> }) {
  const { markup, fill } = useTileFill(read);
  return (
    <svg viewBox="0 0 2.5 2.5" aria-hidden>
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own generated pattern */}
      <defs dangerouslySetInnerHTML={{ __html: markup }} />
      <rect width={2.5} height={2.5} fill={fill} />
    </svg>
  );
}
