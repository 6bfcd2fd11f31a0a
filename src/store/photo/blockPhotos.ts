// Photographs of single blocks that are being worked on: each with the corners of its block, what was read between them, and what a person
// has put right. One is read after the other in a worker; nothing is part of the quilt before a command says so.
import { createStore } from 'zustand/vanilla';
import { type Phrase, phrase } from '../../model/phrase';
import { type PictureId, picturesUsed } from '../../model/picture/picture';
import type { FabricId, Project } from '../../model/project';
import type { Problem } from '../../model/result';
import type { LightThere } from '../../photo/block/daylight';
import { isConvex } from '../../photo/plane/quads';
import { type Addresses, OF_PAGE } from '../addresses';
import type { AppStore } from '../app';
import type { BlockFound, BlockLaid } from './blockJobs';
import { bandKey, type Corrected } from './corrected';
import { stripThere } from './fabricOfStrip';
import { CROSSED, insetCorners, SHOWN } from './laidOut';
import { ofQuilt } from './ofQuilt';
import type { OpenedPhoto } from './photoJobs';
import { createPhotoReader, type PhotoFile, type PhotoReader } from './photoReader';
import type { PhotoProgress } from './sentPhoto';
import { createFileTaker, type FilesTaken, STOPPED } from './takingFiles';

export interface BlockPhoto {
  readonly file: PhotoFile;
  readonly name: string;
  readonly opened: OpenedPhoto;
  readonly href: string;
  readonly laid: BlockLaid;
  /** Whether the corners were found, and nobody has moved them. */
  readonly found: boolean;
  readonly read: { readonly block: BlockFound; readonly href: string } | null;
  /** What it was read by, to see whether that still holds; null before. */
  readonly readBy: ReadBy | null;
  readonly corrected: Corrected;
  readonly problems: readonly Problem[];
  /** What became of it, and the picture that the quilt names since then; null while it waits. */
  readonly done: { readonly words: Phrase; readonly picture: PictureId } | null;
}

interface ReadBy {
  readonly laid: BlockLaid;
  readonly fabrics: Project['fabrics'];
  readonly wedge: Project['wedge'];
  /** The light of another photograph of the sitting; null where its own fabrics told it, or none is known. */
  readonly sitting: LightThere | null;
}

export interface BlockPhotosState extends FilesTaken {
  readonly photos: readonly BlockPhoto[];
  /** The one in hand, by the key of its file. */
  readonly current: number | null;
  readonly working: PhotoProgress | null;
}

const EMPTY: BlockPhotosState = { photos: [], current: null, waiting: 0, working: null, refused: [] };

/** The most photographs at a time: each takes some megabytes of memory. */
const MOST_BLOCK_PHOTOS = 24;

const FULL: Problem = {
  code: 'too-many-photos',
  path: '',
  message: phrase('At most {most} photographs at a time. Put these on the wall first.', {
    most: MOST_BLOCK_PHOTOS,
  }),
};

export type BlockPhotos = ReturnType<typeof createBlockPhotos>;

export function createBlockPhotos(
  app: AppStore,
  reader: PhotoReader = createPhotoReader(),
  addresses: Addresses = OF_PAGE,
) {
  const state = createStore<BlockPhotosState>()(() => EMPTY);
  const { getState: get, setState: set } = state;
  let key = 0;
  let going = false;

  const change = (of: number, to: Partial<BlockPhoto>) =>
    set(({ photos }) => ({ photos: photos.map((one) => (one.file.key === of ? { ...one, ...to } : one)) }));
  const photoOf = (of: number) => get().photos.find(({ file }) => file.key === of) ?? null;
  const waitingOf = (photos: readonly BlockPhoto[]) =>
    photos.filter((photo) => !isInQuilt(photo, app.getState().project));
  const hear = (working: PhotoProgress) => set({ working });
  const readBy = ({ laid, read, file }: BlockPhoto): ReadBy => {
    const { fabrics, wedge } = app.getState().project;
    const sitting = read?.block.ownLight ? null : lightOfSitting(get().photos, file.key);
    return { laid, fabrics, wedge, sitting };
  };

  const open = async (name: string, bytes: PhotoFile['bytes']) => {
    const file = { key: ++key, bytes };
    const opened = await reader.ask('open', file, { longest: SHOWN }, hear);
    if (!opened?.ok) return opened?.problems[0] ?? STOPPED;
    const { wedge } = app.getState().project;
    const seen = await reader.ask('corners', file, { wedge }, hear);
    const laid = (seen?.ok ? seen.value : null) ?? { corners: insetCorners(opened.value), bend: 0 };
    const photo: BlockPhoto = {
      file,
      name,
      opened: opened.value,
      href: addresses.make(opened.value.shown),
      laid,
      found: Boolean(seen?.ok && seen.value),
      read: null,
      readBy: null,
      corrected: {},
      problems: [],
      done: null,
    };
    set(({ photos, current }) => ({ photos: [...photos, photo], current: current ?? file.key }));
    return null;
  };

  const files = createFileTaker(state, () => (get().photos.length < MOST_BLOCK_PHOTOS ? null : FULL), open);

  /** The first that is not read as it lies, that in hand before all others. */
  const nextStale = () => {
    const { photos, current } = get();
    const stale = waitingOf(photos).filter((photo) => isStale(photo, readBy(photo)));
    return stale.find(({ file }) => file.key === current) ?? stale[0] ?? null;
  };
  const readOn = async () => {
    if (going) return;
    going = true;
    for (let next = nextStale(); next; next = nextStale()) await readOne(next);
    going = false;
    set({ working: null });
  };
  const readOne = async (photo: BlockPhoto) => {
    const { file, laid } = photo;
    const by = readBy(photo);
    const { project } = app.getState();
    const sitting = lightOfSitting(get().photos, file.key);
    if (!isConvex(laid.corners)) return change(file.key, { readBy: by, problems: [CROSSED] });
    const found = await reader.ask('block', file, { laid, project, sitting }, hear);
    const there = photoOf(file.key);
    if (!there) return;
    if (!found?.ok) return change(file.key, { readBy: by, problems: found?.problems ?? [STOPPED] });
    if (there.read) addresses.revoke(there.read.href);
    const href = addresses.make(found.value.picture);
    change(file.key, {
      read: { block: found.value, href },
      readBy: { ...by, sitting: found.value.ownLight ? null : sitting },
      problems: [],
    });
  };
  const drop = ({ href, read }: BlockPhoto) => {
    addresses.revoke(href);
    if (read) addresses.revoke(read.href);
  };
  // A fabric that is added or changed may be what was not known.
  app.subscribe((now, before) => {
    if (now.project.id !== before.project.id) return;
    if (now.project.fabrics !== before.project.fabrics || now.project.wedge !== before.project.wedge)
      void readOn();
  });

  return {
    state,
    /** Takes files in, one after the other. Each that is no photograph is refused by name, and the rest goes on. */
    async take(given: readonly File[]): Promise<void> {
      await files.take(given);
      await readOn();
    },
    dismiss: files.dismiss,
    show: (current: number) => set({ current }),
    /** Lays the corners; the block is read anew. What was put right stays. */
    lay(of: number, corners: BlockLaid['corners']): void {
      const photo = photoOf(of);
      if (!photo) return;
      change(of, { laid: { ...photo.laid, corners }, found: false });
      void readOn();
    },
    /** Makes another side the top, a quarter turn clockwise on. */
    turn(of: number): void {
      const photo = photoOf(of);
      if (!photo) return;
      const [first, second, third, fourth] = photo.laid.corners;
      // The corner that was at the bottom left comes to the top left.
      change(of, { laid: { ...photo.laid, corners: [fourth!, first!, second!, third!] }, corrected: {} });
      void readOn();
    },
    tell(of: number, place: number, band: number, fabric: FabricId | null): void {
      const photo = photoOf(of);
      if (photo) change(of, { corrected: { ...photo.corrected, [bandKey(place, band)]: fabric } });
    },
    /** The fabric of a strip as it is photographed; null where it was stopped. */
    async fabricOf(of: number, place: number, band: number) {
      const photo = photoOf(of);
      if (!photo?.read) return null;
      const { wedge } = app.getState().project;
      const strip = stripThere(photo.read.block, photo.laid, wedge, place, band);
      const read = await reader.ask('strip', photo.file, { strip, wedge }, hear);
      if (!going) set({ working: null });
      return read;
    },
    /** It became part of the quilt, or was tied to a block of it; the next one comes into hand. */
    finish(of: number, words: Phrase, picture: PictureId): void {
      change(of, { done: { words, picture } });
      const [next] = waitingOf(get().photos);
      if (next) set({ current: next.file.key });
    },
    remove(of: number): void {
      const photo = photoOf(of);
      if (photo) drop(photo);
      const photos = get().photos.filter(({ file }) => file.key !== of);
      set({ photos, current: get().current === of ? (photos[0]?.file.key ?? null) : get().current });
    },
    /** Ends what is going on; what was not read says so. */
    stop(): void {
      files.stop();
      for (const photo of waitingOf(get().photos))
        if (isStale(photo, readBy(photo)))
          change(photo.file.key, { readBy: readBy(photo), problems: [STOPPED] });
      reader.stop();
    },
    readAgain(of: number): void {
      change(of, { readBy: null, problems: [] });
      void readOn();
    },
    clear(): void {
      files.stop();
      reader.stop();
      for (const photo of get().photos) drop(photo);
      set(EMPTY);
    },
  };
}

/** Whether what became of a photograph still holds: an undo takes it back, and it waits again. */
export function isInQuilt({ done }: BlockPhoto, project: Project): boolean {
  return done !== null && picturesUsed(project).has(done.picture);
}

/** The light of the first other photograph whose own fabrics told it. */
function lightOfSitting(photos: readonly BlockPhoto[], but: number): LightThere | null {
  return photos.find(({ file, read }) => file.key !== but && read?.block.ownLight)?.read?.block.light ?? null;
}

function isStale({ readBy: before }: BlockPhoto, now: ReadBy): boolean {
  return (
    before === null ||
    before.laid !== now.laid ||
    before.fabrics !== now.fabrics ||
    before.wedge !== now.wedge ||
    before.sitting !== now.sitting
  );
}

/** The photographs of blocks of an app's open quilt; they go when another quilt is opened. */
export const blockPhotosOf = ofQuilt(createBlockPhotos);
