// The photograph of a wall that is being worked on: its grid, which cells are empty, what was read of each block, and what a person has put
// right. Reading goes on in a worker; nothing is part of the quilt before a command says so.
import { createStore } from 'zustand/vanilla';
import type { Point } from '../../geometry/point';
import { type PictureId, picturesUsed } from '../../model/picture/picture';
import type { FabricId, Project } from '../../model/project';
import type { Problem } from '../../model/result';
import { isConvex } from '../../photo/plane/quads';
import { BLOCK } from '../../photo/wall/cellLook';
import type { GridLaid } from '../../photo/wall/grid';
import { cellsOf } from '../../photo/wall/gridBy';
import { type Addresses, OF_PAGE } from '../addresses';
import type { AppStore } from '../app';
import type { BlockFound } from './blockJobs';
import { bandKey, type Corrected } from './corrected';
import { stripThere } from './fabricOfStrip';
import { CROSSED, insetCorners, SHOWN } from './laidOut';
import { ofQuilt } from './ofQuilt';
import type { OpenedPhoto } from './photoJobs';
import { createPhotoReader, type PhotoFile, type PhotoReader } from './photoReader';
import type { PhotoProgress } from './sentPhoto';
import { bytesOf, STOPPED } from './takingFiles';

export interface WallCell {
  /** In pixels of the photograph, from top left clockwise. */
  readonly corners: readonly Point[];
  readonly empty: boolean;
  /** Whether a person has said so, or that a block hangs there. */
  readonly said: boolean;
  readonly read: { readonly block: BlockFound; readonly href: string } | null;
  readonly corrected: Corrected;
  /** Whether it is not the block of the quilt that it looks like. */
  readonly anew: boolean;
}

export interface WallPhoto {
  readonly file: PhotoFile;
  readonly name: string;
  readonly opened: OpenedPhoto;
  readonly href: string;
  readonly grid: GridLaid;
  /** Whether the grid was found, and nobody has moved it. */
  readonly found: boolean;
  readonly cells: readonly WallCell[];
  /** The pictures of its new blocks as they were hung last; null before. */
  readonly hung: readonly PictureId[] | null;
}

export interface WallPhotoState {
  readonly photo: WallPhoto | null;
  readonly working: PhotoProgress | null;
  readonly problems: readonly Problem[];
}

const EMPTY: WallPhotoState = { photo: null, working: null, problems: [] };

/** Most rows and columns of a photographed wall. */
export const MOST_LINES = 14;

export type WallPhotos = ReturnType<typeof createWallPhoto>;

export function createWallPhoto(
  app: AppStore,
  reader: PhotoReader = createPhotoReader(),
  addresses: Addresses = OF_PAGE,
) {
  const state = createStore<WallPhotoState>()(() => EMPTY);
  const { getState: get, setState: set } = state;
  let key = 0;
  const hear = (working: PhotoProgress) => set({ working });
  const change = (to: Partial<WallPhoto>) =>
    set(({ photo }) => (photo ? { photo: { ...photo, ...to } } : {}));
  const forget = (cells: readonly WallCell[]) => {
    for (const { read } of cells) if (read) addresses.revoke(read.href);
  };
  const drop = () => {
    const { photo } = get();
    if (!photo) return;
    addresses.revoke(photo.href);
    forget(photo.cells);
  };
  const fail = (problems: readonly Problem[] | undefined) =>
    set({ working: null, problems: problems ?? [STOPPED] });
  const isAt = (file: PhotoFile, grid?: GridLaid) => {
    const { photo } = get();
    return photo?.file === file && (grid === undefined || photo.grid === grid);
  };

  /** Marks the cells that look empty, after the grid was laid. */
  const findEmpty = async () => {
    const { photo } = get();
    if (!photo) return;
    const { file, grid } = photo;
    const { wedge } = app.getState().project;
    const likeness = await reader.ask('likeness', file, { grid, wedge }, hear);
    if (!isAt(file, grid)) return;
    if (!likeness?.ok) return fail(likeness?.problems);
    // What a person has said meanwhile stays.
    const cells = get().photo!.cells.map((cell, at) =>
      cell.said ? cell : { ...cell, empty: likeness.value[at]! < BLOCK },
    );
    change({ cells });
    set({ working: null });
  };
  const lay = (grid: GridLaid) => {
    const { photo } = get();
    if (!photo) return;
    forget(photo.cells);
    reader.stop();
    if (!isConvex(grid.corners)) {
      change({ grid, found: false, cells: [] });
      return fail([CROSSED]);
    }
    set({ problems: [] });
    change({ grid, found: false, cells: bareCells(photo, grid) });
    void findEmpty();
  };
  const bareCells = ({ opened }: Pick<WallPhoto, 'opened'>, grid: GridLaid): WallCell[] =>
    cellsOf(grid, opened, app.getState().project.wedge).map((corners) => ({
      corners,
      empty: false,
      said: false,
      read: null,
      corrected: {},
      anew: false,
    }));
  const changeCell = (at: number, to: Partial<WallCell>) => {
    const { photo } = get();
    if (photo) change({ cells: photo.cells.map((cell, one) => (one === at ? { ...cell, ...to } : cell)) });
  };

  return {
    state,
    /** Takes one photograph in the place of the one before. */
    async take(name: string, given: File): Promise<void> {
      reader.stop();
      drop();
      set(EMPTY);
      const bytes = await bytesOf(given);
      if (!bytes.ok) return fail(bytes.problems);
      const file = { key: ++key, bytes: bytes.value };
      const opened = await reader.ask('open', file, { longest: SHOWN }, hear);
      if (key !== file.key) return;
      if (!opened?.ok) return fail(opened?.problems);
      const { wall, wedge } = app.getState().project;
      const seen = await reader.ask('grid', file, { wedge }, hear);
      if (key !== file.key) return;
      const found = seen?.ok ? seen.value : null;
      // Nothing was found: the rows and columns of the quilt, to be laid by hand.
      const [rows, columns] = [wall.rows, wall.columns].map((one) => Math.min(MOST_LINES, one));
      const grid = found ?? {
        rows: rows!,
        columns: columns!,
        corners: insetCorners(opened.value),
        gap: 0,
        bend: 0,
      };
      const photo = { file, name, opened: opened.value, href: addresses.make(opened.value.shown), grid };
      set({
        photo: { ...photo, found: found !== null, cells: bareCells(photo, grid), hung: null },
        problems: [],
      });
      await findEmpty();
    },
    lay,
    markEmpty: (at: number, empty: boolean) => changeCell(at, { empty, said: true }),
    tell(at: number, place: number, band: number, fabric: FabricId | null): void {
      const cell = get().photo?.cells[at];
      if (cell) changeCell(at, { corrected: { ...cell.corrected, [bandKey(place, band)]: fabric } });
    },
    /** The fabric of a strip as it is photographed; null where it was stopped. */
    async fabricOf(at: number, place: number, band: number) {
      const { photo } = get();
      const cell = photo?.cells[at];
      if (!photo || !cell?.read) return null;
      const { wedge } = app.getState().project;
      const laid = { corners: cell.corners, bend: photo.grid.bend };
      const strip = stripThere(cell.read.block, laid, wedge, place, band);
      const read = await reader.ask('strip', photo.file, { strip, wedge }, hear);
      set({ working: null });
      return read;
    },
    takeAnew: (at: number, anew: boolean) => changeCell(at, { anew }),
    /** Reads every block of the grid. */
    async read(): Promise<void> {
      const { photo } = get();
      if (!photo) return;
      const { file, grid, cells } = photo;
      const { project } = app.getState();
      set({ problems: [], working: null });
      const empty = cells.map((cell) => cell.empty);
      const found = await reader.ask('wall', file, { grid, empty, project }, hear);
      if (!isAt(file, grid)) return;
      if (!found?.ok) return fail(found?.problems);
      forget(cells);
      const now = get().photo!.cells;
      change({
        cells: now.map((cell, at) => {
          const block = found.value[at] ?? null;
          const read = block && { block, href: addresses.make(block.picture) };
          return { ...cell, read };
        }),
      });
      set({ working: null });
    },
    /** It hangs as photographed; it stays at hand, so that an undo loses nothing of the work on it. */
    hang: (hung: readonly PictureId[]) => change({ hung }),
    stop(): void {
      reader.stop();
      fail([STOPPED]);
    },
    clear(): void {
      key += 1;
      reader.stop();
      drop();
      set(EMPTY);
    },
  };
}

/** The photograph of the wall of an app's open quilt; it goes when another quilt is opened. */
export const wallPhotoOf = ofQuilt(createWallPhoto);

/** Whether the new blocks of a photographed wall are blocks of the quilt by now: hung once more, they would be there twice. */
export function isHung({ hung }: WallPhoto, project: Project): boolean {
  if (!hung || hung.length === 0) return false;
  const used = picturesUsed(project);
  return hung.some((picture) => used.has(picture));
}
