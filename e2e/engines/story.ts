// The main story as it is walked in every engine, in order: each check goes on where the one before it ended. It looks at what only an
// engine decides (pointers, keys, workers, files, storage); what the tool decides is tested in Chromium.
import { type Browser, KEY, type Pointer, type Thing } from './browser';
import { pause } from './driver';

export interface Place {
  readonly browser: Browser;
  /** What a finger is in this engine: WebKitWebDriver makes a mouse of every pointer. */
  readonly finger: Pointer;
  readonly url: string;
  /** Takes the server away. */
  readonly stopServer: () => void;
  /** Path of a project file of twelve blocks. */
  readonly twelve: string;
  /** Path of a photograph of fabric: a JPEG that says it is turned, as telephones write them. */
  readonly photograph: string;
}
export type Check = (place: Place) => Promise<void>;

const button = (name: string, within?: Thing): Thing => ({
  css: 'button',
  name,
  ...(within ? { within } : {}),
});
const STEPS: Thing = { css: '[aria-label="Order of work"]' };
const UNDO: Thing = { css: '[aria-label="Undo and redo"] button' };
const PNG_WIDTH: Thing = { css: 'input', name: '^Width of the PNG' };
const SHUFFLE_NUMBER: Thing = { css: 'input', name: 'Shuffle number' };
const block = (number: number): Thing => ({ css: '[data-cell]', name: `^Block ${number}, row` });
const step = (name: string): Thing => button(`^${name}`, STEPS);

/** In the page: whether a piece of fabric in the list is filled with a photograph. */
const PHOTOGRAPHED = `
  const fills = [...document.querySelectorAll('.laid-piece .seen path')].map((one) => one.getAttribute('fill') ?? '');
  const patterns = fills.map((fill) => document.getElementById((/#([^)"']+)/.exec(fill) ?? [])[1] ?? ''));
  return patterns.some((one) => one?.querySelector('image')?.href.baseVal.startsWith('blob:'));`;

function must(truth: boolean, words: string): void {
  if (!truth) throw new Error(words);
}

async function undoSays(browser: Browser, words: RegExp): Promise<void> {
  await browser.until(async () => words.test((await browser.nameOf(UNDO)) ?? ''));
}

/** A block is called what it was, once its clashes are counted anew. */
async function isNamed(browser: Browser, number: number, name: string | null): Promise<void> {
  await browser.until(async () => (await browser.nameOf(block(number))) === name);
}

/** Opens a fold; what is counted anew above may move it from under the pointer. */
async function unfold(browser: Browser, name: string): Promise<void> {
  await browser.until(async () => {
    await browser.click({ css: 'summary', name });
    await pause(200);
    return browser.has({ css: 'details[open] > summary', name });
  });
}

/** Takes back the only change. */
async function undo(browser: Browser): Promise<void> {
  await browser.keys(KEY.control, 'z');
  await undoSays(browser, /^Nothing to undo$/);
}

export const STORY: Readonly<Record<string, Check>> = {
  'the example hangs, its clashes are marked, its fabrics are printed': async ({ browser }) => {
    await browser.until(block(6));
    await browser.until({ css: 'h3', name: 'things to look at' }, 20_000);
    const script =
      'return [document.querySelectorAll("svg.top .mark").length, document.querySelectorAll("pattern").length]';
    const [marks, prints] = await browser.run<[number, number]>(script);
    must(marks > 0 && prints > 10, `${marks} marks, ${prints} prints`);
  },
  'the dark theme, which the engine asks for, is dark': async ({ browser }) => {
    const script = 'return getComputedStyle(document.querySelector(".panel")).backgroundColor';
    const paper = await browser.run<string>(script);
    const lightest = Math.max(...(paper.match(/\d+/g) ?? ['255']).slice(0, 3).map(Number));
    must(lightest <= 80, paper);
  },
  'nothing is said at a first visit': async ({ browser }) => {
    await browser.until(() => browser.run('return navigator.serviceWorker.controller !== null'), 15_000);
    await pause(500);
    const said = await browser.run<string>(
      'return [...document.querySelectorAll("[role=status]")].map((one) => one.textContent).join(" ")',
    );
    must(!/newer/i.test(said), said);
  },
  'a block dragged onto another swaps with it, and Control Z takes it back': async ({ browser }) => {
    const before = await browser.nameOf(block(1));
    const [fromX, fromY] = await browser.middle(block(1));
    const [toX, toY] = await browser.middle(block(2));
    await browser.drag([fromX, fromY], [toX, toY]);
    await undoSays(browser, /^Undo: swap blocks 1 and 2$/);
    await undo(browser);
    await isNamed(browser, 1, before);
  },
  'a drag that leaves the wall selects no text': async ({ browser }) => {
    const before = await browser.nameOf(block(1));
    const [x, y] = await browser.middle(block(1));
    const [toX, toY] = await browser.middle({ css: '.panel h2' });
    await browser.drag([x, y], [toX, toY]);
    const selected = await browser.run<string>('return String(getSelection())');
    must(selected === '', selected);
    await isNamed(browser, 1, before);
  },
  'R and the round handle turn the picked block': async ({ browser }) => {
    const [pickX, pickY] = await browser.middle(block(1));
    await browser.stroke([[pickX, pickY]]);
    await browser.keys('r');
    await undoSays(browser, /^Undo: turn block 1$/);
    await undo(browser);
    const [x, y, width, height] = await browser.middle(block(1));
    await browser.drag([x + width / 2, y - height / 2], [x + width / 2, y + height / 2]);
    await undoSays(browser, /^Undo: turn block 1$/);
    await undo(browser);
  },
  'the wheel zooms in': async ({ browser }) => {
    const [x, y, width] = await browser.middle(block(1));
    await browser.wheel([x, y], -300);
    await browser.until(async () => (await browser.middle(block(1)))[2] > width * 1.2);
  },
  'a finger on the zoomed wall moves the wall and no block': async ({ browser, finger }) => {
    // At rest after it came closer.
    const [blockX, blockY] = await browser.middle(block(1));
    // On the flannel by the left edge, where neither a block nor a tool lies.
    const [x, y] = await browser.run<[number, number]>(`
      const { left, top, height } = document.querySelector('.wall').getBoundingClientRect();
      const free = (y) => !document.elementFromPoint(left + 12, y)?.closest('[data-cell], [role=toolbar], button');
      for (let y = top + height - 12; y > top + 52; y -= 8) if (free(y)) return [left + 12, y];
      throw new Error('no flannel is in sight');`);
    const name = await browser.nameOf(block(1));
    await browser.drag([x, y], [x + 100, y - 40], finger);
    await browser.until(async () => Math.abs((await browser.middle(block(1)))[0] - blockX) > 20);
    const [afterX, afterY] = await browser.middle(block(1));
    const [across, down] = [afterX - blockX, afterY - blockY];
    must(
      Math.abs(across) > 20 && Math.abs(across) < 130 && Math.abs(down) < 80,
      `moved ${across}, ${down} for 100, -40`,
    );
    await isNamed(browser, 1, name);
    await browser.click(button('^Whole top'));
  },
  'a mend is seen on the wall, then applied': async ({ browser }) => {
    await browser.click(step('Wall'));
    await browser.click(button('^Blocks \\d+ and \\d+ meet with'));
    await browser.until({ css: '.findings input[type=checkbox]' });
    await pause(300);
    await browser.click({ css: '.findings input[type=checkbox]' });
    await browser.click(button('^Apply'));
    await undoSays(browser, /^Undo: /);
  },
  'what cannot be used is refused beside the field': async ({ browser }) => {
    await unfold(browser, 'Shuffle options');
    await browser.fill(SHUFFLE_NUMBER, 'apple', KEY.tab);
    await browser.until({ css: '.complaint', name: 'whole number' });
    await browser.fill(SHUFFLE_NUMBER, '7', KEY.tab);
  },
  'the shuffle runs in a worker, and its layout is used': async ({ browser }) => {
    await browser.click(button('^Shuffle$'));
    await browser.until(button('^Use this layout'), 30_000);
    await browser.click(button('^Use this layout'));
    await undoSays(browser, /^Undo: shuffle/);
  },
  'SVG, PNG and the templates of the pattern are made': async ({ browser }) => {
    await browser.run(`
      window.made = [];
      const make = URL.createObjectURL;
      URL.createObjectURL = (blob) => { made.push([blob.type, blob.size]); return make.call(URL, blob); };`);
    await browser.click(step('Finishing'));
    const parts: Thing = { css: '[aria-label="Parts of finishing"]' };
    const files = [
      ['Picture', '^Save as SVG', 'image/svg+xml'],
      ['Picture', '^Save the picture \\(PNG\\)', 'image/png'],
      ['Pattern', '^Templates only', 'application/pdf'],
    ] as const;
    for (const [part, name, type] of files) {
      await browser.click(button(`^${part}`, parts));
      // A picture as wide as the quilt is printed or a whole pattern takes long, and says no more of the engine.
      if (type === 'image/png') await browser.fill(PNG_WIDTH, '600', KEY.enter);
      await browser.click(button(name));
      const made = () =>
        browser.run<boolean>(
          'return made.some(([type, size]) => type === arguments[0] && size > 20_000)',
          type,
        );
      await browser.until(made, 150_000).catch(async () => {
        const [all, foot] = await browser.run<[string, string]>(
          'return [JSON.stringify(made), document.querySelector(".step-foot").innerText]',
        );
        throw new Error(`no ${type} but ${all}; the foot says: ${foot}`);
      });
    }
  },
  'a photograph is decoded upright in a worker, and its fabric read': async ({ browser, photograph }) => {
    await browser.click(step('Fabrics'));
    await browser.click(button('^From a photograph'));
    await browser.until({ css: 'h2', name: '^Fabrics from photographs' });
    await browser.file('input[aria-label="Photographs of fabrics"]', photograph);
    await browser.until({ css: '.photo-reading' }, 40_000);
    const [width, height] = await browser.run<[number, number]>(`
      const { naturalWidth, naturalHeight } = document.querySelector('.photo-picture img');
      return [naturalWidth, naturalHeight];`);
    must(width > height, `${width} × ${height}: it lies on its side`);
  },
  'the fabric gets its true size and hangs in the list as itself': async ({ browser }) => {
    await browser.click({ css: 'label', name: '^True size$' });
    await browser.fill({ css: 'input', name: '^Width of the frame' }, '6', KEY.enter);
    await browser.until(button('^Add this fabric'));
    // What the new size changes is read first.
    await browser.until(async () => !(await browser.has(button('^Stop$'))), 40_000);
    await browser.click(button('^Add this fabric'));
    await undoSays(browser, /^Undo: add the fabric /);
    await browser.until(() => browser.run<boolean>(PHOTOGRAPHED), 20_000);
  },
  'what was done is there after the page is loaded again, without a server': async ({
    browser,
    url,
    stopServer,
  }) => {
    await browser.until({ css: '.save-state', name: '^Saved' });
    const before = await browser.nameOf(block(1));
    stopServer();
    await browser.go(url);
    await browser.until(block(6));
    await isNamed(browser, 1, before);
    await browser.click(step('Fabrics'));
    await browser.until(() => browser.run<boolean>(PHOTOGRAPHED), 15_000);
    await browser.click(step('Wall'));
    await browser.until({ css: 'h3', name: 'to look at' }, 15_000);
  },
  'a file of twelve blocks is opened': async ({ browser, twelve }) => {
    await browser.click({ css: '.project-button' });
    await browser.until({ css: '[role=dialog]' });
    await browser.file('input[type=file]', twelve);
    await browser.until(block(12), 20_000);
  },
  'no error in the console, no process lost': async ({ browser }) => {
    must(browser.faults.length === 0, browser.faults.join(' | '));
  },
};
