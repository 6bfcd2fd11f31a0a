// Drives WebKitGTK's small browser over the HTTP of WebKitWebDriver (Debian: webkit2gtk-driver).
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { type Command, type Driver, freePort, patiently, pause, type Start, started } from './driver';

const BROWSERS = [
  '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser',
  '/usr/lib/aarch64-linux-gnu/webkit2gtk-4.1/MiniBrowser',
];

/** Where the browser is; null where it is not installed. */
export function webkitBrowser(): string | null {
  return [process.env.WEBKIT_PATH, ...BROWSERS].find((path) => path && existsSync(path)) ?? null;
}

/** The paths of W3C WebDriver. */
const PATHS: Readonly<Record<Exclude<Command, 'ElementSendKeys'>, string>> = {
  Navigate: '/url',
  ExecuteScript: '/execute/sync',
  PerformActions: '/actions',
  SetWindowRect: '/window/rect',
  FindElement: '/element',
};

interface Answer {
  readonly value: { readonly error?: string; readonly message?: string } | null;
}

export async function openWebKit({ folder, display }: Start): Promise<Driver> {
  const binary = webkitBrowser();
  if (!binary) throw new Error('openWebKit: WebKit is not installed');
  const port = await freePort();
  const home = join(folder, `webkit-${port}`);
  mkdirSync(home);
  const homes = { HOME: home, XDG_CONFIG_HOME: home, XDG_DATA_HOME: home, XDG_CACHE_HOME: home };
  const faults: string[] = [];
  // Painted by the processor at once, and not put together from layers: a graphics card that the processor only plays takes half as much
  // work again.
  const painting = { WEBKIT_SKIA_ENABLE_CPU_RENDERING: '1', WEBKIT_DISABLE_COMPOSITING_MODE: '1' };
  const env = { ...process.env, ...homes, ...painting, GTK_THEME: 'Adwaita:dark', DISPLAY: display };
  const child = started('WebKitWebDriver', [`--port=${port}`, '--host=127.0.0.1'], { env }, faults);

  const ask = async (method: string, path: string, body?: object): Promise<unknown> => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      method,
      headers: { 'content-type': 'application/json' },
      ...(body ? { body: JSON.stringify(body) } : {}),
    });
    const { value } = (await answer.json()) as Answer;
    if (value?.error) throw new Error(`${path}: ${value.error} ${value.message}`.slice(0, 300));
    return value;
  };

  await patiently(() => ask('GET', '/status'), 50, 100);
  const browser = { binary, args: ['--automation', '--enable-write-console-messages-to-stdout=true'] };
  const wanted = { alwaysMatch: { browserName: 'MiniBrowser', 'webkitgtk:browserOptions': browser } };
  const opened = (await ask('POST', '/session', { capabilities: wanted })) as {
    sessionId: string;
    capabilities: { browserVersion: string };
  };
  const session = `/session/${opened.sessionId}`;
  await ask('POST', `${session}/timeouts`, { script: 60_000 });
  return {
    version: opened.capabilities.browserVersion,
    faults,
    send: (command, body) => {
      if (command !== 'ElementSendKeys') return ask('POST', `${session}${PATHS[command]}`, body);
      const { id, text } = body as { id: string; text: string };
      return ask('POST', `${session}/element/${id}/value`, { text });
    },
    close: async () => {
      await ask('DELETE', session).catch(() => undefined);
      await pause(200);
      child.kill();
    },
  };
}
