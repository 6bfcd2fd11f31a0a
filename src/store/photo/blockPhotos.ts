// Photographs of single blocks that are being worked on: each with the corners of its block, what was read between them, and what a person
// has put right. One is read after the other in a worker; nothing is part of the quilt before a command says so.
import { createStore } from 'zustand/vanilla';
import { type Phrase, phrase } from '../../model/phrase';
import { checkSize } from '../../model/picture/photograph';
import type { FabricId, Project } from '../../model/project';
import type { Problem } from '../../model/result';
import { isConvex } from '../../photo/plane/quads';
import type { AppStore } from '../app';
import { type Addresses, OF_PAGE } from './addresses';
import type { BlockFound, BlockLaid } from './blockJobs';
import { bandKey, type Corrected } from './corrected';
import { CROSSED, insetCorners, SHOWN, STOPPED, UNREADABLE } from './laidOut';
import type { OpenedPhoto } from './photoJobs';
import { createPhotoReader, type PhotoFile, type PhotoReader } from './photoReader';
import type { PhotoProgress } from './sentPhoto';

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
  /** What became of it; null while it waits. */
  readonly done: Phrase | null;
}

interface ReadBy {
  readonly laid: BlockLaid;
  readonly fabrics: Project['fabrics'];
  readonly wedge: Project['wedge'];
}

export interface BlockPhotosState {
  readonly photos: readonly BlockPhoto[];
  /** The one in hand, by the key of its file. */
  readonly current: number | null;
  /** Files that are still to be opened. */
  readonly waiting: number;
  readonly working: PhotoProgress | null;
  readonly refused: readonly { readonly name: string; readonly problem: Problem }[];
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
  /** How often all was stopped: files that wait then are not opened. */
  let stops = 0;

  const change = (of: number, to: Partial<BlockPhoto>) =>
    set(({ photos }) => ({ photos: photos.map((one) => (one.file.key === of ? { ...one, ...to } : one)) }));
  const photoOf = (of: number) => get().photos.find(({ file }) => file.key === of) ?? null;
  const refuse = (name: string, problem: Problem) =>
    set(({ refused }) => ({ refused: [...refused, { name, problem }] }));
  const hear = (working: PhotoProgress) => set({ working });
  const readBy = ({ laid }: BlockPhoto): ReadBy => {
    const { fabrics, wedge } = app.getState().project;
    return { laid, fabrics, wedge };
  };

  const open = async (name: string, file: PhotoFile) => {
    const opened = await reader.ask('open', file, { longest: SHOWN }, hear);
    if (!opened?.ok) return refuse(name, opened?.problems[0] ?? STOPPED);
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
  };

  /** The first that is not read as it lies, that in hand before all others. */
  const nextStale = () => {
    const { photos, current } = get();
    const stale = photos.filter((photo) => photo.done === null && isStale(photo, readBy(photo)));
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
    if (!isConvex(laid.corners)) return change(file.key, { readBy: by, problems: [CROSSED] });
    const found = await reader.ask('block', file, { laid, project: app.getState().project }, hear);
    const there = photoOf(file.key);
    if (!there) return;
    if (!found?.ok) return change(file.key, { readBy: by, problems: found?.problems ?? [STOPPED] });
    if (there.read) addresses.revoke(there.read.href);
    const href = addresses.make(found.value.picture);
    change(file.key, { read: { block: found.value, href }, readBy: by, problems: [] });
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
    async take(files: readonly File[]): Promise<void> {
      set(({ waiting }) => ({ waiting: waiting + files.length, refused: [] }));
      const asked = stops;
      for (const file of files) {
        const sized = checkSize(file.size);
        if (stops !== asked) refuse(file.name, STOPPED);
        else if (get().photos.length >= MOST_BLOCK_PHOTOS) refuse(file.name, FULL);
        else if (!sized.ok) refuse(file.name, sized.problems[0]!);
        else {
          const bytes = await file.arrayBuffer().catch(() => null);
          if (bytes) await open(file.name, { key: ++key, bytes: new Uint8Array(bytes) });
          else refuse(file.name, UNREADABLE);
        }
        set(({ waiting }) => ({ waiting: Math.max(0, waiting - 1) }));
      }
      await readOn();
    },
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
    /** It became part of the quilt, or was tied to a block of it; the next one comes into hand. */
    finish(of: number, done: Phrase): void {
      change(of, { done });
      const next = get().photos.find((photo) => photo.done === null);
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
      stops += 1;
      for (const photo of get().photos)
        if (photo.done === null && isStale(photo, readBy(photo)))
          change(photo.file.key, { readBy: readBy(photo), problems: [STOPPED] });
      reader.stop();
    },
    readAgain(of: number): void {
      change(of, { readBy: null, problems: [] });
      void readOn();
    },
    clear(): void {
      stops += 1;
      reader.stop();
      for (const photo of get().photos) drop(photo);
      set(EMPTY);
    },
  };
}

function isStale({ readBy: before }: BlockPhoto, now: ReadBy): boolean {
  return (
    before === null ||
    before.laid !== now.laid ||
    before.fabrics !== now.fabrics ||
    before.wedge !== now.wedge
  );
}

const made = new WeakMap<AppStore, BlockPhotos>();

/** The photographs of blocks of an app's open quilt; they go when another quilt is opened. */
export function blockPhotosOf(app: AppStore): BlockPhotos {
  let photos = made.get(app);
  if (!photos) {
    const one = createBlockPhotos(app);
    app.subscribe((now, before) => {
      if (now.project.id !== before.project.id) one.clear();
    });
    made.set(app, one);
    photos = one;
  }
  return photos;
}
