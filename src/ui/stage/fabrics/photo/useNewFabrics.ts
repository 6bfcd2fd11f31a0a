// The rows of new fabrics with their names and look-alikes, and the one change that adds them, or that gives a fabric there is its photograph.
import { useCallback, useMemo, useState } from 'react';
import { likeness } from '../../../../cloth/likeness';
import { printMix } from '../../../../cloth/print/printMix';
import type { Command } from '../../../../editing/apply';
import { addFabrics, changeFabric } from '../../../../editing/commands/fabrics';
import { capital, freeName } from '../../../../model/name';
import { counted, phrase } from '../../../../model/phrase';
import type { Fabric, Project } from '../../../../model/project';
import { ok, type Problem, type Result } from '../../../../model/result';
import { isDirectional, type Patch, type PatchRead, type PhotoAtWork } from '../../../../store/photo/patches';
import { photoCloth } from '../../../../store/photo/photoFabric';
import type { SittingState } from '../../../../store/photo/sitting';
import type { Session } from '../../../../store/session';
import { useApp, useAppStore } from '../../../app';
import { useSession } from '../../../session';
import { useWrite } from '../../../words';
import { closePhotos } from './closePhotos';
import { useSitting, useSittingState } from './sitting';

export interface NewRow {
  readonly photo: PhotoAtWork;
  readonly patch: Patch;
  readonly name: string;
  /** A fabric with which it reads as one; null for none. */
  readonly likeness: string | null;
}

/** Problems of the patches as they were when they were refused; those of all under null. */
type Refused = ReadonlyMap<Patch | null, readonly Problem[]>;

const NONE: Refused = new Map();
const NOT_READ: Problem = {
  code: 'not-read',
  path: '',
  message: phrase('Wait until this fabric is read, or leave it out.'),
};

export function useNewFabrics() {
  const write = useWrite();
  const store = useAppStore();
  const session = useSession();
  const sitting = useSitting();
  const project = useApp((app) => app.project);
  const [problems, setProblems] = useState<Refused>(NONE);
  const [busy, setBusy] = useState(false);
  const rowsNow = useCallback(
    ({ photos, current, replacing }: SittingState) => {
      const shown = replacing === null ? photos : photos.filter(({ file }) => file.key === current);
      return rowsOf(shown, replacing !== null, project, (read) => write(read.found.name));
    },
    [project, write],
  );
  const state = useSittingState((now) => now);
  const shown = useMemo(() => rowsNow(state), [rowsNow, state]);
  const add = async () => {
    setBusy(true);
    // What was changed last is read first.
    await sitting.settled();
    const { replacing } = sitting.state.getState();
    const rows = rowsNow(sitting.state.getState());
    const made = await Promise.all(rows.map((row) => fabricOf(session, row)));
    setBusy(false);
    const wrong = rows.flatMap(({ patch }, at): [Patch, readonly Problem[]][] => {
      const one = made[at]!;
      return one.ok ? [] : [[patch, one.problems]];
    });
    setProblems(new Map(wrong));
    if (wrong.length > 0) return;
    const fabrics = made.flatMap((one) => (one.ok ? [one.value] : []));
    const { run, announce, project: now } = store.getState();
    const refused = run(commandOf(now, replacing, fabrics), 'here');
    if (refused.length > 0) {
      setProblems(new Map([[null, refused]]));
      return;
    }
    announce(
      replacing
        ? phrase('The fabric has its photograph.')
        : counted(fabrics.length, '1 fabric is in the list.', '{count} fabrics are in the list.'),
    );
    for (const { photo } of rows) sitting.removePhoto(photo.file.key);
    closePhotos(store, sitting);
  };
  return { rows: shown, add, problems, busy };
}

/** The command on fabrics as made: those that are new, or what one looks like from now on. */
function commandOf(
  project: Project,
  replacing: string | null,
  fabrics: readonly Omit<Fabric, 'id'>[],
): Command {
  const [first] = fabrics;
  if (replacing === null || !first) return addFabrics(fabrics);
  return changeFabric(project, replacing, { colour: first.colour, cloth: first.cloth });
}

/** The fabric of a row, its tile saved; problems where it is not read, has no size, or its picture is not taken. */
async function fabricOf(session: Session, { patch, name }: NewRow): Promise<Result<Omit<Fabric, 'id'>>> {
  const { read, background } = patch;
  if (!read) return { ok: false, problems: patch.problems.length > 0 ? patch.problems : [NOT_READ] };
  // Nothing is saved of what has no size.
  const sized = photoCloth(read.found, '0'.repeat(64));
  if (!sized.ok) return sized;
  const picture = await session.takePicture(read.found.tile.bytes);
  if (!picture.ok) return picture;
  const made = photoCloth(read.found, picture.value);
  return made.ok
    ? ok({ name, ...made.value, background, ...(isDirectional(patch) ? { oneWay: true } : {}) })
    : made;
}

function rowsOf(
  photos: readonly PhotoAtWork[],
  replacing: boolean,
  { fabrics, preferences }: Project,
  nameOf: (read: PatchRead) => string,
): NewRow[] {
  const names = new Set(fabrics.map(({ name }) => name));
  const known = fabrics.map((fabric) => ({
    name: fabric.name,
    background: fabric.background,
    mix: printMix(fabric),
  }));
  const rows: NewRow[] = [];
  for (const photo of photos)
    for (const patch of replacing ? photo.patches.filter(({ key }) => key === photo.patch) : photo.patches) {
      const name = patch.name ?? freeName(patch.read ? capital(nameOf(patch.read)) : photo.name, names);
      names.add(name);
      const mix = patch.read?.found.colours;
      const like =
        mix && !patch.background && !replacing
          ? known.find((one) => !one.background && likeness(one.mix, mix, preferences.lookalikes) > 0)
          : undefined;
      rows.push({ photo, patch, name, likeness: like?.name ?? null });
      if (mix) known.push({ name, background: patch.background, mix });
    }
  return rows;
}
