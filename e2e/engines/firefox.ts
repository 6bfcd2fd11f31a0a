// Drives Firefox over Marionette, the line that its own WebDriver program uses too (Debian: firefox-esr). A message is its length in
// bytes, a colon, and JSON: [0, number, command, body] there, [1, number, error, value] back.
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { join } from 'node:path';
import process from 'node:process';
import { type Driver, freePort, patiently, pause, type Start, started } from './driver';

const BROWSERS = ['/usr/bin/firefox-esr', '/usr/bin/firefox'];

/** Where the browser is; null where it is not installed. */
export function firefoxBrowser(): string | null {
  return [process.env.FIREFOX_PATH, ...BROWSERS].find((path) => path && existsSync(path)) ?? null;
}

const COLON = 0x3a;

/** Takes whole messages off the front of what has come so far; the rest stays for the next time. */
function takeMessages(come: Buffer): { readonly messages: readonly unknown[]; readonly rest: Buffer } {
  const messages: unknown[] = [];
  let rest = come;
  for (let colon = rest.indexOf(COLON); colon > 0; colon = rest.indexOf(COLON)) {
    const end = colon + 1 + Number(rest.subarray(0, colon).toString());
    if (rest.length < end) break;
    messages.push(JSON.parse(rest.subarray(colon + 1, end).toString()));
    rest = rest.subarray(end);
  }
  return { messages, rest };
}

/** A line to the browser on which commands are asked and answered. */
class Line {
  private readonly waiting = new Map<number, [(value: unknown) => void, (error: Error) => void]>();
  private readonly socket: Socket;
  private asked = 0;

  private constructor(socket: Socket) {
    this.socket = socket;
  }

  /** Connects; the browser greets first. */
  static open(port: number): Promise<Line> {
    return new Promise((done, refuse) => {
      const socket = connect(port, '127.0.0.1');
      const line = new Line(socket);
      let come = Buffer.alloc(0);
      socket.once('error', refuse);
      socket.on('data', (data: Buffer) => {
        const { messages, rest } = takeMessages(Buffer.concat([come, data]));
        come = Buffer.from(rest);
        for (const message of messages) {
          if (Array.isArray(message)) line.hear(message);
          else done(line);
        }
      });
    });
  }

  ask(command: string, body: object): Promise<unknown> {
    this.asked += 1;
    const number = this.asked;
    const text = JSON.stringify([0, number, command, body]);
    return new Promise((done, refuse) => {
      this.waiting.set(number, [done, refuse]);
      this.socket.write(`${Buffer.byteLength(text)}:${text}`);
    });
  }

  end(): void {
    this.socket.destroy();
  }

  private hear(message: readonly unknown[]): void {
    const [, number, error, value] = message as [
      1,
      number,
      { error: string; message: string } | null,
      unknown,
    ];
    const waiting = this.waiting.get(number);
    this.waiting.delete(number);
    if (error) waiting?.[1](new Error(`${error.error} ${error.message}`.slice(0, 300)));
    else waiting?.[0](value && typeof value === 'object' && 'value' in value ? value.value : value);
  }
}

export async function openFirefox({ folder }: Start): Promise<Driver> {
  const binary = firefoxBrowser();
  if (!binary) throw new Error('openFirefox: Firefox is not installed');
  const port = await freePort();
  const profile = join(folder, `firefox-${port}`);
  mkdirSync(profile);
  writeFileSync(join(profile, 'user.js'), settings(port, folder));
  const faults: string[] = [];
  const words = ['--marionette', '--headless', '--no-remote', '--profile', profile];
  const env = { ...process.env, HOME: folder, MOZ_CRASHREPORTER_DISABLE: '1' };
  const child = started(binary, words, { env }, faults);
  const line = await patiently(() => Line.open(port), 150, 200);
  const opened = (await line.ask('WebDriver:NewSession', { strictFileInteractability: false })) as {
    capabilities: { browserVersion: string };
  };
  await line.ask('WebDriver:SetTimeouts', { script: 60_000 });
  return {
    version: opened.capabilities.browserVersion,
    faults,
    send: (command, body) => {
      // In the page's own world, so that a script sees what the page's scripts see.
      const own = command === 'ExecuteScript' ? { sandbox: null, newSandbox: false } : {};
      return line.ask(`WebDriver:${command}`, { ...body, ...own });
    },
    close: async () => {
      const quit = line.ask('Marionette:Quit', { flags: ['eForceQuit'] });
      await Promise.race([quit, pause(2000)]).catch(() => undefined);
      line.end();
      child.kill('SIGKILL');
    },
  };
}

/**
 * Settings of a fresh profile: the line's port, real touch, the theme, nothing asked of the network, files saved in `folder`, no page but
 * the one that is opened, and frames that are drawn half as often, which nobody sees.
 */
function settings(port: number, folder: string): string {
  const all: Readonly<Record<string, string | number | boolean>> = {
    'marionette.port': port,
    'layout.css.prefers-color-scheme.content-override': 0,
    'dom.w3c_touch_events.enabled': 1,
    'devtools.console.stdout.content': true,
    'app.normandy.enabled': false,
    'browser.aboutwelcome.enabled': false,
    'browser.startup.page': 0,
    'browser.newtab.preload': false,
    'dom.ipc.processPrelaunch.enabled': false,
    'layout.frame_rate': 30,
    'datareporting.policy.dataSubmissionEnabled': false,
    'browser.download.folderList': 2,
    'browser.download.dir': folder,
    'browser.download.open_pdf_attachments_inline': false,
  };
  return Object.entries(all)
    .map(([name, value]) => `user_pref("${name}", ${JSON.stringify(value)});\n`)
    .join('');
}
