// A page in one of the engines as a test handles it: things are found by their name or by CSS, and are pressed, dragged and typed into
// with real pointers and keys.
import { type Driver, pause } from './driver';

/** What is looked for: what is seen of `css`, with a name that matches, within another such thing. */
export interface Thing {
  readonly css: string;
  readonly name?: string;
  readonly within?: Thing;
}
export type Spot = readonly [x: number, y: number];
export type Box = readonly [x: number, y: number, width: number, height: number];
export type Pointer = 'mouse' | 'touch';

/** Keys of W3C WebDriver without a letter of their own. */
export const KEY = { control: '\uE009', enter: '\uE007', tab: '\uE004' } as const;

/** Milliseconds; other tests may run beside. */
const PATIENCE = 60_000;

/** In the page: `find` gives what is seen and fits, `nameOf` what it is called. */
const FIND = `
const nameOf = (one) => (one.getAttribute('aria-label') ?? one.labels?.[0]?.textContent ?? one.textContent ?? '').trim();
const find = ({ css, name, within }) => {
  const root = within ? find(within) : document;
  const wanted = name && new RegExp(name);
  const seen = (one) => (!wanted || wanted.test(nameOf(one))) && one.getBoundingClientRect().width > 0;
  return [...(root?.querySelectorAll(css) ?? [])].find(seen) ?? null;
};
`;

/** In the page: notes whether the next press lands on the thing. What the press does may take the thing away. */
const NOTE_HIT = `
globalThis.hit = false;
const thing = arguments[0];
addEventListener('click', ({ target }) => { globalThis.hit = find(thing)?.contains(target) ?? false; }, { capture: true, once: true });`;

export class Browser {
  private readonly driver: Driver;

  constructor(driver: Driver) {
    this.driver = driver;
  }

  get faults(): readonly string[] {
    return this.driver.faults;
  }

  close(): Promise<void> {
    return this.driver.close();
  }

  async go(url: string): Promise<void> {
    await this.driver.send('Navigate', { url });
  }

  /** Sizes the window so that the page is about `width` × `height`. */
  async resize(width: number, height: number): Promise<void> {
    await this.driver.send('SetWindowRect', { x: 0, y: 0, width, height });
    await pause(250);
    const [across, down] = await this.run<[number, number]>('return [innerWidth, innerHeight]');
    await this.driver.send('SetWindowRect', {
      x: 0,
      y: 0,
      width: 2 * width - across,
      height: 2 * height - down,
    });
    await pause(250);
  }

  /** Runs the body of a function in the page; `find` and `nameOf` are there. */
  async run<T>(script: string, ...args: readonly unknown[]): Promise<T> {
    return (await this.driver.send('ExecuteScript', { script: `${FIND}${script}`, args })) as T;
  }

  has(thing: Thing): Promise<boolean> {
    return this.run('return find(arguments[0]) !== null', thing);
  }

  /** What a thing is called; null where there is none. */
  nameOf(thing: Thing): Promise<string | null> {
    return this.run('const one = find(arguments[0]); return one && nameOf(one)', thing);
  }

  /** Waits for a thing, or until a test holds; throws after a while. */
  async until(wanted: Thing | (() => Promise<boolean>), patience = PATIENCE): Promise<void> {
    const end = Date.now() + patience;
    const holds = typeof wanted === 'function' ? wanted : () => this.has(wanted);
    while (!(await holds())) {
      if (Date.now() > end) {
        throw new Error(
          `waited in vain for ${typeof wanted === 'function' ? String(wanted) : JSON.stringify(wanted)}`,
        );
      }
      await pause(40);
    }
  }

  /** The middle of a thing and its size, once it is there, in sight and at rest. */
  async middle(thing: Thing): Promise<Box> {
    // What is laid out anew meanwhile may be out of sight once more.
    const script = `
      const one = find(arguments[0]);
      if (!one) return null;
      if (!one.closest('.wall-area')) one.scrollIntoView({ block: 'center', behavior: 'instant' });
      const box = one.getBoundingClientRect();
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      return x < 0 || x > innerWidth || y < 0 || y > innerHeight ? null : [x, y, box.width, box.height];`;
    let at: Box | null = null;
    await this.until(async () => {
      const last = at;
      at = await this.run<Box | null>(script, thing);
      return at !== null && last !== null && at.every((part, index) => Math.abs(part - last[index]!) < 1);
    });
    return at!;
  }

  /** Presses a thing; once more where what was laid out anew meanwhile took it from under the pointer. */
  async click(thing: Thing): Promise<void> {
    await this.until(async () => {
      const [x, y] = await this.middle(thing);
      await this.run(NOTE_HIT, thing);
      await this.stroke([[x, y]]);
      // A page that goes away at the press has nothing noted.
      return (await this.run<boolean | undefined>('return globalThis.hit')) !== false;
    });
  }

  /** Presses at the first spot, passes the others, and lets go at the last. */
  async stroke(spots: readonly Spot[], pointerType: Pointer = 'mouse'): Promise<void> {
    const move = ([x, y]: Spot) => {
      return { type: 'pointerMove', duration: 15, x: Math.round(x), y: Math.round(y), origin: 'viewport' };
    };
    const [first, ...others] = spots;
    if (!first) return;
    const down = { type: 'pointerDown', button: 0 };
    const actions = [move(first), down, ...others.map(move), { type: 'pointerUp', button: 0 }];
    await this.driver.send('PerformActions', {
      actions: [{ type: 'pointer', id: pointerType, parameters: { pointerType }, actions }],
    });
  }

  async drag([fromX, fromY]: Spot, [toX, toY]: Spot, pointer: Pointer = 'mouse'): Promise<void> {
    const parts = [0, 1, 2, 3, 4, 5, 6].map((step) => step / 6);
    await this.stroke(
      parts.map((part): Spot => [fromX + (toX - fromX) * part, fromY + (toY - fromY) * part]),
      pointer,
    );
  }

  /** Presses keys together. */
  async keys(...keys: readonly string[]): Promise<void> {
    const down = keys.map((value) => ({ type: 'keyDown', value }));
    const up = keys.toReversed().map((value) => ({ type: 'keyUp', value }));
    await this.driver.send('PerformActions', {
      actions: [{ type: 'key', id: 'keys', actions: [...down, ...up] }],
    });
  }

  /** Presses and lets go one key after another. */
  async type(text: string): Promise<void> {
    const actions = Array.from(text).flatMap((value) => [
      { type: 'keyDown', value },
      { type: 'keyUp', value },
    ]);
    await this.driver.send('PerformActions', { actions: [{ type: 'key', id: 'keys', actions }] });
  }

  /** Puts text in place of what a field holds. */
  async fill(field: Thing, text: string, then: string): Promise<void> {
    await this.click(field);
    await this.keys(KEY.control, 'a');
    await this.type(`${text}${then}`);
  }

  async wheel([x, y]: Spot, deltaY: number): Promise<void> {
    const scroll = {
      type: 'scroll',
      x: Math.round(x),
      y: Math.round(y),
      deltaX: 0,
      deltaY,
      duration: 0,
      origin: 'viewport',
    };
    await this.driver.send('PerformActions', {
      actions: [{ type: 'wheel', id: 'wheel', actions: [scroll] }],
    });
  }

  /** Gives a file to a file field. */
  async file(css: string, path: string): Promise<void> {
    const found = await this.driver.send('FindElement', { using: 'css selector', value: css });
    const id = Object.values(found as Record<string, string>)[0];
    await this.driver.send('ElementSendKeys', { id, text: path });
  }
}
