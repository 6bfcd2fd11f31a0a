// Parts of the screen whose code comes when they are first shown, or before that while the page is idle, so that the first
// script holds the wall and little else.
import { type ComponentType, createElement, type FunctionComponent, use } from 'react';

/** A part that shows itself once its code is there; until then the nearest Suspense shows what stands in for it. */
export type Later<Props extends object> = FunctionComponent<Props> & {
  /** Fetches the code; once it is there the part shows at once. Rejects when it cannot be had, and may be asked again. */
  readonly fetched: () => Promise<unknown>;
};

/** A part from a module that is imported when `load` is called. */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>): Later<Props> {
  let known: ComponentType<Props> | null = null;
  let coming: Promise<ComponentType<Props>> | null = null;
  const fetched = () => {
    coming ??= load().then(
      (part) => {
        known = part;
        return part;
      },
      (fault: unknown) => {
        coming = null;
        throw fault;
      },
    );
    return coming;
  };
  const Part = (props: Props) => createElement(known ?? use(fetched()), props);
  return Object.assign(Part, { fetched });
}

/** Fetches parts one after another while the page is idle. One that cannot be had now is asked for again when it is shown. */
export async function fetchWhileIdle(
  parts: readonly Later<never>[],
  idle: () => Promise<void>,
): Promise<void> {
  for (const part of parts) {
    await idle();
    await part.fetched().catch(() => undefined);
  }
}
