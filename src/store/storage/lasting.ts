// How long what is saved lasts: asks the browser to keep it for good, how much room it has, and knows which browser removes it.
import { MOST_MEGABYTES } from '../../editing/openFile';

export interface Lasting {
  /** Whether the browser has promised to remove nothing unless the person asks for it. */
  readonly lasts: boolean;
  /** Bytes that are left, where they run low; null where there is room enough or nobody knows. */
  readonly room: number | null;
}

/** Bytes below which room runs low: less than the largest quilt takes. */
export const LOW_ROOM = MOST_MEGABYTES * 1024 * 1024;

/**
 * Asks for storage that lasts (Storage Standard, WHATWG), where it does not yet, and for the room left. Some browsers ask the person in turn,
 * so it is called once there is work to keep. Never rejects.
 */
export async function askToLast(storage: StorageManager | undefined): Promise<Lasting> {
  return { lasts: await lasts(storage), room: await roomLeft(storage) };
}

async function lasts(storage: StorageManager | undefined): Promise<boolean> {
  try {
    return ((await storage?.persisted()) || (await storage?.persist())) ?? false;
  } catch {
    return false;
  }
}

async function roomLeft(storage: StorageManager | undefined): Promise<number | null> {
  try {
    const { quota, usage = 0 } = (await storage?.estimate()) ?? {};
    const room = quota === undefined ? LOW_ROOM : Math.max(0, quota - usage);
    return room < LOW_ROOM ? room : null;
  } catch {
    return null;
  }
}

/**
 * Whether the browser removes what is saved after a week without a visit. Safari does, after seven days of its use without a press or key on
 * the page, unless the tool was added to the home screen or the Dock (WebKit, 'Full Third-Party Cookie Blocking and More', 24 March 2020) or
 * it has promised to keep it (WebKit, 'Updates to Storage Policy', 2023). Nothing but its maker's name tells.
 */
export function isRemovedAfterAWeek(
  browser: Pick<Navigator, 'vendor'>,
  installed: boolean,
  lasts: boolean,
): boolean {
  return browser.vendor.startsWith('Apple') && !installed && !lasts;
}
