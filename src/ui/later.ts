// Parts of the screen whose code comes when they are first shown, or before that while the page is idle, so that the first
// script holds the wall and little else. Shown.tsx shows them.
import type { ComponentType } from 'react';

/** A part whose code comes later. */
export interface Later<Props extends object> {
  /**
   * Fetches the code, once; rejects with PartMissing when it cannot be had, and so again until `forget`. Once the code is there, the
   * promise is marked as React marks one, so that `use` gives the part at once.
   */
  readonly fetched: () => Promise<ComponentType<Props>>;
  /** Fetches the code before it is wanted. When it cannot be had now, it is asked for again when it is shown. */
  readonly ahead: () => Promise<void>;
  /** Lets the code be asked for again after it could not be had. */
  readonly forget: () => void;
}

/** The code of a part could not be fetched: the server is away, or has a newer version. */
export class PartMissing extends Error {
  constructor(
    /** Lets it be asked for again. */
    readonly forget: () => void,
    cause: unknown,
  ) {
    super('A part of the page could not be fetched', { cause });
  }
}

/** What fetches every part that was made, in order. */
const parts: { readonly isKnown: () => boolean; readonly ahead: () => Promise<void> }[] = [];

/** A part from a module that is imported when `load` is called. */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>): Later<Props> {
  let coming: Promise<ComponentType<Props>> | null = null;
  let known = false;
  const forget = () => {
    coming = null;
  };
  const fetch = async () => {
    try {
      const part = await load();
      known = true;
      return part;
    } catch (cause) {
      throw new PartMissing(forget, cause);
    }
  };
  const part: Later<Props> = {
    fetched: () => {
      coming ??= marked(fetch());
      return coming;
    },
    ahead: async () => {
      await part.fetched().catch(forget);
    },
    forget,
  };
  parts.push({ isKnown: () => known, ahead: part.ahead });
  return part;
}

/** The promise, marked with its value once it is there. */
function marked<Value>(promise: Promise<Value>): Promise<Value> {
  promise.then(
    (value) => Object.assign(promise, { status: 'fulfilled', value }),
    () => undefined,
  );
  return promise;
}

/** Fetches all parts one after another, each after `idle`; those too that are made meanwhile, by the parts fetched. */
export async function fetchWhileIdle(idle: () => Promise<void>): Promise<void> {
  for (const part of parts) {
    if (part.isKnown()) continue;
    await idle();
    await part.ahead();
  }
}

/** Milliseconds after which a page that is never idle fetches all the same. */
const PATIENCE = 5_000;
/** Milliseconds between two parts where the browser cannot say that it is idle. */
const PAUSE = 200;

/** Resolves when the page has nothing to do. */
export function whenIdle(): Promise<void> {
  return new Promise((resolve) => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => resolve(), { timeout: PATIENCE });
    else setTimeout(resolve, PAUSE);
  });
}
