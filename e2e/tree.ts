// The page as assistive technology has it: Chromium's accessibility tree, read over the DevTools protocol, and what its live regions say.
// Whoever walks by it finds everything by role and name and acts by keyboard alone.
import { type CDPSession, expect, type Page } from '@playwright/test';

/** A node of the tree, with the named nodes round it, outermost first. */
export interface Part {
  readonly role: string;
  readonly name: string;
  readonly within: readonly { readonly role: string; readonly name: string }[];
}

interface TreeNode {
  nodeId: string;
  parentId?: string;
  ignored: boolean;
  role?: { value?: string };
  name?: { value?: string };
}

/** What of the tree is a control, in Chromium's names of roles. */
export const CONTROLS: ReadonlySet<string> = new Set(
  'button link textbox checkbox radio combobox slider spinbutton switch searchbox DisclosureTriangle ColorWell'.split(
    ' ',
  ),
);

/** The tree as it stands; the browser does not keep it up to date after that. */
export async function readTree(page: Page): Promise<Part[]> {
  const session = await page.context().newCDPSession(page);
  const parts = await allParts(session);
  await session.detach();
  return parts;
}

async function openTree(page: Page) {
  const session = await page.context().newCDPSession(page);
  await session.send('Accessibility.enable');
  return {
    all: () => allParts(session),
    focused: () => focusedPart(session),
  };
}

async function allParts(session: CDPSession): Promise<Part[]> {
  const { nodes } = (await session.send('Accessibility.getFullAXTree')) as { nodes: TreeNode[] };
  const known = new Map(nodes.map((node) => [node.nodeId, node]));
  return nodes.filter(({ ignored }) => !ignored).map((node) => partOf(node, known));
}

function partOf(node: TreeNode, known: ReadonlyMap<string, TreeNode>): Part {
  const within: Part['within'][number][] = [];
  for (let up = known.get(node.parentId ?? ''); up; up = known.get(up.parentId ?? '')) {
    const { role, name } = wordsOf(up);
    if (!up.ignored && name !== '') within.unshift({ role, name });
  }
  return { ...wordsOf(node), within };
}

function wordsOf({ role, name }: TreeNode) {
  return { role: role?.value ?? '', name: (name?.value ?? '').replace(/\s+/g, ' ').trim() };
}

async function focusedPart(session: CDPSession): Promise<{ role: string; name: string }> {
  const { result } = await session.send('Runtime.evaluate', { expression: 'document.activeElement' });
  const { nodes } = (await session.send('Accessibility.getPartialAXTree', {
    objectId: result.objectId!,
    fetchRelatives: false,
  })) as { nodes: TreeNode[] };
  return wordsOf(nodes[0]!);
}

/** A person at the keyboard who has only the tree and the voice. */
export async function atTheKeys(page: Page) {
  const tree = await openTree(page);
  const voice = await listenTo(page);
  const isIt = (role: string, name: string | RegExp, part: { role: string; name: string }) =>
    part.role === role && (typeof name === 'string' ? part.name === name : name.test(part.name));
  /** Goes on with a key until the control has the focus; returns how often it was pressed. */
  const reach = async (role: string, name: string | RegExp, by = 'Tab', most = 60): Promise<number> => {
    await expect
      .poll(async () => (await tree.all()).some((part) => isIt(role, name, part)), {
        message: `${role} ${name} is in the tree`,
        timeout: 60_000,
      })
      .toBe(true);
    const passed: string[] = [];
    for (let presses = 0; presses <= most; presses += 1) {
      const at = await tree.focused();
      if (isIt(role, name, at)) return presses;
      passed.push(`${at.role} ${at.name}`);
      await page.keyboard.press(by);
    }
    throw new Error(`${by} does not reach ${role} ${name} in ${most} presses: ${passed.join(' | ')}`);
  };
  return {
    tree,
    voice,
    reach,
    key: (name: string) => page.keyboard.press(name),
    type: (text: string) => page.keyboard.type(text),
    /** Reaches a button by Tab and presses it. */
    press: async (name: string | RegExp, role = 'button') => {
      await reach(role, name);
      await page.keyboard.press('Enter');
    },
    /** Reaches a field, and writes over what stands in it. */
    write: async (name: string | RegExp, text: string) => {
      await reach('textbox', name);
      await page.keyboard.press('Control+a');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    },
    /** Goes to the steps by F6 and to one of them by Tab. */
    toStep: async (name: string) => {
      for (let parts = 0; parts < 8; parts += 1) {
        const inSteps = await page.evaluate(() => document.activeElement?.closest('nav ol') !== null);
        if (inSteps) break;
        await page.keyboard.press('F6');
      }
      const forth = await reach('button', new RegExp(`^${name}`), 'Tab', 6).catch(() => null);
      if (forth === null) await reach('button', new RegExp(`^${name}`), 'Shift+Tab', 14);
      await page.keyboard.press('Enter');
      // On to the step, once it is there: its heading has the focus.
      await expect(page.getByRole('heading', { level: 2, name, exact: true })).toBeVisible({
        timeout: 30_000,
      });
      await page.keyboard.press('F6');
      await reach('heading', name, 'Tab', 0);
    },
  };
}

/** Everything the live regions of the page say from now on. */
async function listenTo(page: Page) {
  await page.evaluate(() => {
    const LIVE = ':is([aria-live], [role="status"], [role="alert"]):not([aria-live="off"])';
    const said: string[] = [];
    Object.assign(globalThis, { said });
    const words = (node: Node | null) => (node?.textContent ?? '').replace(/\s+/g, ' ').trim();
    const isLive = (node: Node | null) =>
      Boolean((node instanceof Element ? node : node?.parentElement)?.closest(LIVE));
    new MutationObserver((changes) => {
      const news = new Set<string>();
      for (const { type, target, addedNodes } of changes) {
        if (type === 'characterData' && isLive(target)) news.add(words(target.parentElement));
        for (const node of addedNodes) {
          if (isLive(target)) news.add(words(node));
          else if (node instanceof Element)
            for (const one of node.querySelectorAll(LIVE)) news.add(words(one));
        }
      }
      for (const one of news) if (one !== '') said.push(one);
    }).observe(document.body, { childList: true, characterData: true, subtree: true });
  });
  let from = 0;
  const all = () => page.evaluate(() => (globalThis as unknown as { said: string[] }).said);
  return {
    /** Waits until something of this kind is said, and forgets all before it. Returns the sentence. */
    says: async (words: RegExp, timeout = 30_000): Promise<string> => {
      const news = async () => (await all()).slice(from);
      await expect
        .poll(async () => (await news()).find((one) => words.test(one)) ?? (await news()).join(' | '), {
          timeout,
        })
        .toMatch(words);
      const sentence = (await news()).find((one) => words.test(one))!;
      from = (await all()).length;
      return sentence;
    },
    forget: async () => {
      from = (await all()).length;
    },
    all,
  };
}
