// The app's state: the open project with its history, the step on show, what is picked, and the preview on the wall. It holds no
// DOM; React reads it through ui/app.ts.
import { createStore } from 'zustand/vanilla';
import type { Mark } from '../balance/finding';
import type { Way } from '../colour/seen';
import type { FabricOrder } from '../drawing/fabricOrder';
import { apply, type Command } from '../editing/apply';
import type { HandList } from '../editing/handList';
import { EMPTY_HISTORY, type History, record, redo, undo } from '../editing/history';
import { soundStep } from '../editing/keptHistory';
import { type Phrase, phrase } from '../model/phrase';
import type { BlockId, FabricId, Project, StripSetId } from '../model/project';
import type { Problem } from '../model/result';
import type { Inches, LengthUnit } from '../model/units';
import type { DraftOf, Drafts } from './drafts';
import { FINISHING, type Finishing } from './finishing';
import { begunAnew, inUnit } from './unitOfPerson';

export const STEPS = ['fabrics', 'sets', 'wedges', 'blocks', 'wall', 'finishing'] as const;
export type Step = (typeof STEPS)[number];

/** A change shown on the wall before it is accepted: the command, and the project it gives. */
export interface Preview {
  readonly command: Command;
  readonly project: Project;
}

/** Marks shown on the wall for a row of a list. */
export interface Spot {
  readonly id: string;
  readonly marks: readonly Mark[];
  /** Blocks with a ring, so that a short seam is found on a large wall. */
  readonly blocks: readonly BlockId[];
}

/** A photograph of the real wall, shown beside the one on screen: never saved, never sent. */
export interface WallPhoto {
  readonly name: string;
  readonly image: Blob;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

/** The view of the wall; it is no part of the project. */
export interface Look {
  readonly way: Way;
  /** From how far a squinting person looks, in inches; null: as is usual in the person's unit. */
  readonly distance: Inches | null;
  /** How strong the deficiency of colour vision is, 0 to 1. */
  readonly severity: number;
  readonly marks: boolean;
  readonly photo: WallPhoto | null;
}

export interface RefusedText {
  readonly text: string;
  readonly problems: readonly Problem[];
}

/** What is open on the large area of a step. */
export interface Laid extends Finishing {
  /** The strip set whose strips and cuts are shown at full size. */
  readonly set: StripSetId | null;
  /** The fabric whose form is open in the panel. */
  readonly fabric: FabricId | null;
  /** In which order the fabrics are laid out. */
  readonly order: FabricOrder;
  /** Whether the grid of strips lies on the large area instead of the fabrics. */
  readonly strips: boolean;
  /** Whether photographs lie there, of which fabrics are made (photo/sitting.ts). */
  readonly photos: boolean;
  /** Texts that cells of the grid refused, by the names of the cells: they stay while another step is on show. */
  readonly refusedCells: Readonly<Record<string, RefusedText>>;
  /** The way in which sewn blocks are being entered at the step Blocks; null: none are. */
  readonly entering: 'keys' | 'list' | null;
  /** The block they are entered into; null: the next empty one, else a new one. */
  readonly into: BlockId | null;
  /** The size, in inches, that tops on offer should come close to; null where none are on offer. */
  readonly sizes: { readonly width: number; readonly height: number } | null;
  /** Whether photographs of blocks, or of the wall, are worked on there (photo/). */
  readonly photoBlocks: boolean;
  readonly photoWall: boolean;
  /** The list of moves to make by hand, and whether it lies on the large area of the step Wall. */
  readonly moves: HandList | null;
  readonly movesOpen: boolean;
}

const NOTHING_LAID: Laid = {
  set: null,
  fabric: null,
  order: 'value',
  strips: false,
  photos: false,
  refusedCells: {},
  entering: null,
  into: null,
  sizes: null,
  photoBlocks: false,
  photoWall: false,
  moves: null,
  movesOpen: false,
  ...FINISHING,
};

export interface AppState {
  /** The open project, in the person's unit whatever it was drawn in; what is saved of it is `documentOf`. */
  readonly project: Project;
  /** The unit of the person. */
  readonly unit: LengthUnit;
  /** The unit the open project was drawn in, as its file says. */
  readonly drawnIn: LengthUnit;
  readonly history: History;
  /** Number of changes, undos and redos so far; an answer for an earlier revision is stale. */
  readonly revision: number;
  readonly step: Step;
  /** The block picked on the wall or in the list. */
  readonly picked: BlockId | null;
  /** Whether the next cell that is tapped or entered changes places with the picked block. */
  readonly swapping: boolean;
  /** The fabric whose pieces are lit on the wall. */
  readonly lit: FabricId | null;
  /** The fabric that stays lit while no other is pointed at. */
  readonly heldLit: FabricId | null;
  /** The finding whose marks are shown strongest. */
  readonly finding: string | null;
  /** A single clash or centre of weight marked on the wall instead of the finding. */
  readonly spot: Spot | null;
  readonly preview: Preview | null;
  readonly look: Look;
  /** Whether the wall fills the large area at a step that has work of its own there. */
  readonly wallLarge: boolean;
  /** Whether the wall fills the screen. */
  readonly wallFull: boolean;
  /** The steps whose large area is folded away on a small screen. */
  readonly folded: readonly Step[];
  readonly laid: Laid;
  /** Forms that are filled in part. */
  readonly drafts: Drafts;
  /** The last announcement: shown for a moment at the foot of the wall and, where it is `heard`, read out by screen readers. */
  readonly announced: { readonly words: Phrase; readonly count: number; readonly heard: boolean };
  /** The last change in words, for screen readers alone (tellChanges.ts). */
  readonly lastChange: Phrase;
}

export interface AppActions {
  /**
   * Runs a command. Returns why it was refused; an empty list when it was done. A refusal is announced, unless who runs it says it
   * `here`, at its place.
   */
  readonly run: (command: Command, refused?: 'announced' | 'here') => readonly Problem[];
  readonly undo: () => void;
  readonly redo: () => void;
  /** Shows another state of the open quilt; what is on show and what is typed stays. */
  readonly follow: (project: Project, history: History) => void;
  /** Opens another project, with the history kept of it. */
  readonly open: (document: Project, history?: History) => void;
  readonly goTo: (step: Step) => void;
  readonly pick: (block: BlockId | null) => void;
  /** Lets the picked block change places with the next cell that is tapped, or leaves it. */
  readonly swapNext: (swapping: boolean) => void;
  /** Lights a fabric; for null the one that stays lit, if any. */
  readonly light: (fabric: FabricId | null) => void;
  /** Lets a fabric stay lit, or none. */
  readonly holdLit: (fabric: FabricId | null) => void;
  /** Shows the marks of a finding instead of a spot. */
  readonly showFinding: (finding: string | null) => void;
  readonly showSpot: (spot: Spot | null) => void;
  /**
   * Shows the project that a command would give. Returns why the command would be refused; then, and where it changes
   * nothing, there is no preview. Null ends the preview.
   */
  readonly showPreview: (command: Command | null) => readonly Problem[];
  /**
   * Shows lengths in this unit. It is no change of the quilt, and none to undo; a quilt in which nothing was done yet begins anew
   * with the usual sizes of the unit.
   */
  readonly measureIn: (unit: LengthUnit) => void;
  readonly lookAt: (look: Partial<Look>) => void;
  readonly enlargeWall: (large: boolean) => void;
  readonly fillScreen: (full: boolean) => void;
  /** Folds the large area of a step away, or lays it out again. */
  readonly fold: (step: Step, folded: boolean) => void;
  /** Opens things on the large area. */
  readonly lay: (laid: Partial<Laid>) => void;
  /** Keeps the values of a form until they are used or cleared, or another quilt is opened. */
  readonly keepDraft: <K extends keyof Drafts>(form: K, draft: DraftOf<K>) => void;
  readonly announce: (words: Phrase) => void;
  readonly tell: (words: Phrase) => void;
}

export type App = AppState & AppActions;

const DAMAGED_STEP = phrase('This step cannot be undone: its saved copy is damaged.');

/** The open project as it is saved: in the unit it was drawn in. */
export function documentOf({ project, drawnIn }: Pick<AppState, 'project' | 'drawnIn'>): Project {
  return inUnit(project, drawnIn);
}

/** A store for one open project, shown in the person's unit. */
export function createApp(
  document: Project,
  history: History = EMPTY_HISTORY,
  unit: LengthUnit = document.preferences.unit,
) {
  return createStore<App>()((set, get) => ({
    project: inUnit(document, unit),
    unit,
    drawnIn: document.preferences.unit,
    history,
    revision: 0,
    step: 'wall',
    picked: null,
    swapping: false,
    lit: null,
    heldLit: null,
    finding: null,
    spot: null,
    preview: null,
    look: { way: 'colour', distance: null, severity: 1, marks: true, photo: null },
    wallLarge: false,
    wallFull: false,
    folded: [],
    laid: NOTHING_LAID,
    drafts: {},
    announced: { words: phrase(''), count: 0, heard: true },
    lastChange: phrase(''),
    run: (command, refused = 'announced') => {
      const outcome = apply(get().project, command);
      if (!outcome.ok) {
        if (refused === 'announced') get().announce(outcome.problems[0]!.message);
        return outcome.problems;
      }
      if (outcome.change.patches.length === 0) return [];
      set((state) => ({
        ...changed(state, outcome.project),
        history: record(state.history, outcome.change),
      }));
      return [];
    },
    undo: () => {
      const before = get();
      const last = before.history.done.at(-1);
      if (!last) return;
      const undone = soundStep(last, () => undo(before.project, before.history));
      if (!undone) {
        set((state) => ({ history: { ...state.history, done: [] } }));
        get().announce(DAMAGED_STEP);
        return;
      }
      set((state) => ({ ...changed(state, undone.project), history: undone.history }));
      set(shown(get(), phrase('Undone: {change}', { change: last.label })));
    },
    redo: () => {
      const before = get();
      const next = before.history.undone.at(-1);
      if (!next) return;
      const redone = soundStep(next, () => redo(before.project, before.history));
      if (!redone) {
        set((state) => ({ history: { ...state.history, undone: [] } }));
        get().announce(DAMAGED_STEP);
        return;
      }
      set((state) => ({ ...changed(state, redone.project), history: redone.history }));
      set(shown(get(), phrase('Redone: {change}', { change: next.label })));
    },
    follow: (next, history) =>
      set((state) => ({ ...changed(state, next), drawnIn: next.preferences.unit, history })),
    open: (next, history = EMPTY_HISTORY) => {
      set((state) => ({
        ...changed(state, next),
        drawnIn: next.preferences.unit,
        history,
        picked: null,
        finding: null,
        wallFull: false,
        lit: null,
        heldLit: null,
        look: { ...state.look, photo: null },
        laid: NOTHING_LAID,
        drafts: {},
      }));
    },
    goTo: (step) => set({ step, wallLarge: false, wallFull: false, swapping: false }),
    pick: (picked) => set({ picked, swapping: false }),
    swapNext: (swapping) => set({ swapping }),
    light: (fabric) => set((state) => ({ lit: fabric ?? state.heldLit })),
    holdLit: (fabric) => set({ heldLit: fabric, lit: fabric }),
    showFinding: (finding) => set({ finding, spot: null }),
    showSpot: (spot) => set({ spot }),
    showPreview: (command) => {
      const outcome = command && apply(get().project, command);
      const changes = outcome?.ok && outcome.change.patches.length > 0;
      set({ preview: command && changes ? { command, project: outcome.project } : null });
      if (!outcome || outcome.ok) return [];
      get().announce(outcome.problems[0]!.message);
      return outcome.problems;
    },
    measureIn: (unit) => {
      const { project: now, history: done } = get();
      if (unit === get().unit) return;
      const anew = done.done.length + done.undone.length === 0 ? begunAnew(now, unit) : null;
      set((state) => ({
        ...changed({ ...state, unit }, anew ?? now),
        unit,
        drawnIn: anew ? unit : state.drawnIn,
      }));
    },
    lookAt: (look) => set((state) => ({ look: { ...state.look, ...look } })),
    enlargeWall: (wallLarge) => set({ wallLarge }),
    fillScreen: (wallFull) => set({ wallFull }),
    fold: (step, folded) =>
      set((state) => ({
        folded: STEPS.filter((one) => (one === step ? folded : state.folded.includes(one))),
      })),
    lay: (laid) => set((state) => ({ laid: { ...state.laid, ...laid } })),
    keepDraft: (form, draft) => set((state) => ({ drafts: { ...state.drafts, [form]: draft } })),
    announce: (words) =>
      set((state) => ({ announced: { words, count: state.announced.count + 1, heard: true } })),
    tell: (lastChange) => set({ lastChange }),
  }));
}

function changed(state: AppState, project: Project): Partial<AppState> {
  const stays = project.blocks.some((block) => block.id === state.picked);
  const { laid } = state;
  const setStays = project.stripSets.some((set) => set.id === laid.set);
  const isThere = (id: FabricId | null) => project.fabrics.some((fabric) => fabric.id === id);
  const heldLit = isThere(state.heldLit) ? state.heldLit : null;
  const intoStays = project.blocks.some((block) => block.id === laid.into);
  const colourwayStays = project.colourways.some((one) => one.id === laid.colourway);
  return {
    project: inUnit(project, state.unit),
    revision: state.revision + 1,
    preview: null,
    spot: null,
    picked: stays ? state.picked : null,
    lit: isThere(state.lit) ? state.lit : heldLit,
    heldLit,
    swapping: false,
    laid: {
      ...laid,
      set: setStays ? laid.set : null,
      fabric: isThere(laid.fabric) ? laid.fabric : null,
      into: intoStays ? laid.into : null,
      colourway: colourwayStays ? laid.colourway : null,
    },
    // The last announcement (a block is pinned) may no longer be true.
    announced: { ...state.announced, words: phrase('') },
    lastChange: phrase(''),
  };
}

/** Words that are shown at once; they are read out a little later, together with the clashes. */
function shown(state: AppState, words: Phrase): Partial<AppState> {
  return { announced: { words, count: state.announced.count + 1, heard: false } };
}

export type AppStore = ReturnType<typeof createApp>;
