// Fabrics being made from photographs: files taken in, opened and read one after another in a worker, whatever step is on show. It is no
// part of the quilt until the fabrics are added, and does not outlive the page.
import { createStore } from 'zustand/vanilla';
import { phrase } from '../../model/phrase';
import type { FabricId } from '../../model/project';
import type { Problem } from '../../model/result';
import { GREY_CARD, lightOf, WHITE_PAPER } from '../../photo/light/light';
import type { Frame } from '../../photo/pixels/frame';
import { type Addresses, OF_PAGE } from '../addresses';
import { ofQuilt } from './ofQuilt';
import {
  askOf,
  firstFrame,
  isStale,
  isUntouched,
  measuredAnew,
  type Neutral,
  newPatch,
  type Patch,
  type PhotoAtWork,
  type PhotoLight,
} from './patches';
import type { FabricFound } from './photoJobs';
import { createPhotoReader, type PhotoFile, type PhotoReader } from './photoReader';
import type { PhotoProgress } from './sentPhoto';
import { createFileTaker, type FilesTaken, STOPPED } from './takingFiles';

export interface SittingState extends FilesTaken {
  readonly photos: readonly PhotoAtWork[];
  /** The photograph in hand. */
  readonly current: number | null;
  readonly working: PhotoProgress | null;
  /** The light of all photographs, those still to come too; null where each has its own. */
  readonly shared: PhotoLight['light'] | null;
  /** The fabric that is to look like the photograph; null where new ones are made. */
  readonly replacing: FabricId | null;
}

/** Photographs at work at once: their files lie in the page's memory. */
const MOST_AT_WORK = 40;
/** The longer side of a photograph on screen, pixels. */
const SHOWN = 1600;

const EMPTY: SittingState = {
  photos: [],
  current: null,
  waiting: 0,
  working: null,
  refused: [],
  shared: null,
  replacing: null,
};

const TRUE_VALUE: Readonly<Record<Neutral, number | null>> = {
  white: WHITE_PAPER,
  card: GREY_CARD,
  grey: null,
};

const FULL: Problem = {
  code: 'too-many-photos',
  path: '',
  message: phrase('At most {most} photographs at a time. Add the fabrics of these first.', {
    most: MOST_AT_WORK,
  }),
};

export type Sitting = ReturnType<typeof createSitting>;

export function createSitting(reader: PhotoReader = createPhotoReader(), addresses: Addresses = OF_PAGE) {
  const state = createStore<SittingState>()(() => EMPTY);
  const { getState: get, setState: set } = state;
  let key = 0;
  let going: Promise<void> | null = null;

  const photoOf = (of: number) => get().photos.find(({ file }) => file.key === of) ?? null;
  const change = (of: number, to: (photo: PhotoAtWork) => Partial<PhotoAtWork>) =>
    set(({ photos }) => ({
      photos: photos.map((photo) => (photo.file.key === of ? { ...photo, ...to(photo) } : photo)),
    }));
  const changePatch = (of: number, patch: number, to: Partial<Patch>) => {
    change(of, ({ patches }) => ({
      patches: patches.map((one) => (one.key === patch ? { ...one, ...to } : one)),
    }));
  };
  const hear = (working: PhotoProgress) => set({ working });

  const open = async (name: string, bytes: PhotoFile['bytes']) => {
    const file = { key: ++key, bytes };
    const opened = await reader.ask('open', file, { longest: SHOWN }, hear);
    if (!opened?.ok) return opened?.problems[0] ?? STOPPED;
    const patch = newPatch(++key, firstFrame(opened.value));
    const { shared, current } = get();
    const photo: PhotoAtWork = {
      file,
      name,
      opened: opened.value,
      href: addresses.make(opened.value.shown),
      light: shared && { light: shared, at: null },
      neutral: 'white',
      ruler: null,
      perInch: null,
      patches: [patch],
      patch: patch.key,
    };
    set(({ photos }) => ({ photos: [...photos, photo], current: current ?? file.key }));
    return null;
  };

  const files = createFileTaker(state, () => (get().photos.length < MOST_AT_WORK ? null : FULL), open);

  /** The first patch that is not read as it lies, that in hand before all others. */
  const nextStale = () => {
    const { photos, current } = get();
    const all = photos.flatMap((photo) =>
      photo.patches.filter((patch) => isStale(photo, patch)).map((patch) => ({ photo, patch })),
    );
    const inHand = ({ photo, patch }: (typeof all)[number]) =>
      photo.file.key === current && photo.patch === patch.key;
    return all.find(inHand) ?? all[0] ?? null;
  };
  /** Reads what is stale, one patch after another, until all is read. */
  const readOn = (): Promise<void> => {
    going ??= reading().finally(() => {
      going = null;
      set({ working: null });
    });
    return going;
  };
  const reading = async () => {
    for (let next = nextStale(); next; next = nextStale()) {
      const { photo, patch } = next;
      const again = measuredAnew(photo, patch);
      if (again) {
        changePatch(photo.file.key, patch.key, again);
        continue;
      }
      const ask = askOf(photo, patch);
      const read = await reader.ask('fabric', photo.file, { wish: ask }, hear);
      const asked = JSON.stringify(ask);
      const there = photoOf(photo.file.key)?.patches.find((one) => one.key === patch.key);
      if (!there) continue;
      if (read?.ok) {
        forget(there);
        changePatch(photo.file.key, patch.key, { read: withHrefs(read.value), problems: [], asked });
      } else changePatch(photo.file.key, patch.key, { problems: read?.problems ?? [STOPPED], asked });
    }
  };
  const withHrefs = (found: FabricFound) => ({
    found,
    hrefs: {
      tile: addresses.make(found.tile),
      before: addresses.make(found.before),
      after: addresses.make(found.after),
    },
  });
  const forget = ({ read }: Patch) => {
    if (read) for (const href of Object.values(read.hrefs)) addresses.revoke(href);
  };
  const drop = (photos: readonly PhotoAtWork[]) => {
    for (const photo of photos) {
      addresses.revoke(photo.href);
      for (const patch of photo.patches) forget(patch);
    }
  };
  /** Changes a photograph, and reads what that made stale. */
  const edit = (of: number, to: (photo: PhotoAtWork) => Partial<PhotoAtWork>) => {
    change(of, to);
    void readOn();
  };

  return {
    state,
    /** Takes files in. Each that is none is refused by name, and the rest goes on. */
    async take(given: readonly File[]): Promise<void> {
      await files.take(given);
      await readOn();
    },
    /** Settles once all that lies on the photographs is read, or could not be. */
    settled: readOn,
    dismiss: files.dismiss,
    show: (current: number) => set({ current }),
    edit,
    editPatch: (of: number, patch: number, to: Partial<Patch>) => {
      changePatch(of, patch, to);
      void readOn();
    },
    /** Takes the light from what is inside a frame and is white or grey in truth; returns why it cannot be taken. */
    async takeLight(of: number, at: Frame, neutral: Neutral): Promise<readonly Problem[]> {
      const photo = photoOf(of);
      if (!photo) return [];
      const spot = await reader.ask('spot', photo.file, { frame: at }, hear);
      set({ working: null });
      if (!spot) return [STOPPED];
      if (!spot.ok) return spot.problems;
      const light = lightOf(spot.value.light, TRUE_VALUE[neutral]);
      if (!light.ok) return light.problems;
      edit(of, () => ({ light: { light: light.value, at }, neutral }));
      return [];
    },
    /** The light of one photograph for all, or for each its own again. */
    shareLight(of: number | null): void {
      const shared = of === null ? null : (photoOf(of)?.light?.light ?? null);
      set(({ photos }) => ({
        shared,
        photos: photos.map((photo) =>
          shared === null || photo.file.key === of ? photo : { ...photo, light: { light: shared, at: null } },
        ),
      }));
      void readOn();
    },
    /** Lays a frame on the fabric under a point, as another fabric; returns why none is found there. */
    async split(of: number, x: number, y: number): Promise<readonly Problem[]> {
      const photo = photoOf(of);
      if (!photo) return [];
      const frame = await reader.ask('tapped', photo.file, { x, y, seed: 1 }, hear);
      set({ working: null });
      if (!frame) return [STOPPED];
      if (!frame.ok) return frame.problems;
      this.addFrame(of, frame.value);
      return [];
    },
    /** Lays another frame. The first goes as long as nobody has touched it. */
    addFrame(of: number, frame: Frame): void {
      const patch = newPatch(++key, frame);
      edit(of, ({ patches, opened }) => {
        const touched = patches.filter((one) => !isUntouched(one, opened));
        for (const one of patches) if (!touched.includes(one)) forget(one);
        return { patches: [...touched, patch], patch: patch.key };
      });
    },
    removePatch(of: number, patch: number): void {
      const photo = photoOf(of);
      if (!photo) return;
      for (const one of photo.patches) if (one.key === patch) forget(one);
      const patches = photo.patches.filter((one) => one.key !== patch);
      if (patches.length === 0) this.removePhoto(of);
      else change(of, () => ({ patches, patch: patches.at(-1)!.key }));
    },
    removePhoto(of: number): void {
      drop(get().photos.filter(({ file }) => file.key === of));
      const photos = get().photos.filter(({ file }) => file.key !== of);
      set({ photos, current: get().current === of ? (photos[0]?.file.key ?? null) : get().current });
    },
    replace: (replacing: FabricId | null) => set({ replacing }),
    /** Ends what is going on; what was not read says so, and is read again when it is changed. */
    stop(): void {
      files.stop();
      for (const photo of get().photos)
        for (const patch of photo.patches)
          if (isStale(photo, patch))
            changePatch(photo.file.key, patch.key, {
              problems: [STOPPED],
              asked: JSON.stringify(askOf(photo, patch)),
            });
      reader.stop();
    },
    readAgain: (of: number, patch: number) => {
      changePatch(of, patch, { asked: null });
      void readOn();
    },
    clear(): void {
      files.stop();
      reader.stop();
      drop(get().photos);
      set(EMPTY);
    },
  };
}

/** The sitting of an app's open quilt; it ends when another quilt is opened. */
export const sittingOf = ofQuilt(() => createSitting());
