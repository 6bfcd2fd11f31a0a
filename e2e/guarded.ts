// The `test` of every spec: it fails where a page logged an error, threw one, was refused something by its content-security policy, or
// asked anything of another server, whatever else it shows. Specs import `test` and `expect` from here.
import { type BrowserContext, test as plain } from '@playwright/test';

export type { CDPSession, Locator, Page } from '@playwright/test';
export { expect } from '@playwright/test';

interface Guard {
  /** Whether the page fetches its later parts while it is idle; a spec that does not ask for it gets each part when it is shown. */
  readonly ahead: boolean;
  /** Whether the page is painted; a spec that looks at pixels asks for it. All else is as if it were, and is had for a tenth less work. */
  readonly painted: boolean;
  /** What a spec that takes files away may find in the console; nothing else does. */
  readonly mayBeLogged: RegExp | null;
  /** Watches the pages of a further context; those of the test's own are watched already. */
  readonly watch: (context: BrowserContext) => Promise<void>;
}

/** Addresses that ask nothing of a server. */
const OWN = /^(?:data|blob|about):/;

/**
 * Leaves the page no rest long enough for what has time: fetching all parts ahead is a third of the work of opening the page, in tests
 * that show two of them. Runs in the page.
 */
function neverLongIdle() {
  const ask = requestIdleCallback;
  globalThis.requestIdleCallback = (done, options) =>
    (options?.timeout ?? Infinity) < 1000 ? ask(done, options) : 0;
}

/** What a page that is not painted has on its global: the style sheet that keeps it so. */
export interface Unpainted {
  readonly unpainted?: CSSStyleSheet;
}

/** What is wholly clear is laid out, pressed and read as ever, and the browser paints none of it; on paper all is there. Runs in the page. */
function neverPainted() {
  const unpainted = new CSSStyleSheet();
  unpainted.replaceSync('@media screen { :root { opacity: 0; } }');
  document.adoptedStyleSheets = [unpainted];
  Object.assign(globalThis, { unpainted } satisfies Unpainted);
}

/** What every page has on its global: the workers that were asked and have not answered yet, each with the number of its ask. */
export interface Asking {
  readonly asking: ReadonlyMap<Worker, number>;
}

/** Keeps that up (src/store/workers/protocol.ts). Runs in the page. */
function noteAsking() {
  const asking = new Map<Worker, number>();
  globalThis.Worker = class extends Worker {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      this.addEventListener('message', ({ data }: MessageEvent<{ kind: string; number: number }>) => {
        const ended = data.kind === 'answer' || data.kind === 'failed';
        if (ended && asking.get(this) === data.number) asking.delete(this);
      });
    }
    override postMessage(message: { kind: string; number: number }) {
      if (message.kind === 'ask') asking.set(this, message.number);
      super.postMessage(message);
    }
    override terminate() {
      asking.delete(this);
      super.terminate();
    }
  };
  Object.assign(globalThis, { asking } satisfies Asking);
}

export const test = plain.extend<Guard>({
  ahead: [false, { option: true }],
  painted: [false, { option: true }],
  mayBeLogged: [null, { option: true }],
  watch: [
    async ({ context, baseURL, ahead, painted, mayBeLogged }, use) => {
      const faults: string[] = [];
      const watch = async (watched: BrowserContext) => {
        watched.on('console', (message) => {
          if (message.type() === 'error' && !mayBeLogged?.test(message.text()))
            faults.push(`logged: ${message.text()}`);
        });
        watched.on('weberror', (thrown) => faults.push(`thrown: ${thrown.error().message}`));
        watched.on('request', (request) => {
          const url = request.url();
          if (!OWN.test(url) && !url.startsWith(`${baseURL}/`))
            faults.push(`asked of another server: ${url}`);
        });
        await watched.addInitScript(() => {
          document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI, sample }) =>
            console.error('refused by the policy:', violatedDirective, blockedURI, sample),
          );
        });
        await watched.addInitScript(noteAsking);
        if (!ahead) await watched.addInitScript(neverLongIdle);
        if (!painted) await watched.addInitScript(neverPainted);
      };
      await watch(context);
      await use(watch);
      if (faults.length > 0) throw new Error(`The page is not as it should be:\n${faults.join('\n')}`);
    },
    { auto: true },
  ],
});
