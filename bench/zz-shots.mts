import { preview } from 'vite';
import { openBrowser } from '/work/wt/speed/bench/page';

const server = await preview({ preview: { port: 4977, strictPort: false }, logLevel: 'silent' });
const url = server.resolvedUrls!.local[0]!;
const browser = await openBrowser();
const rects = `(() => { const r = (s) => { const e = document.querySelector(s); if (!e) return null; const b = e.getBoundingClientRect(); return [b.x,b.y,b.width,b.height].map(n=>Math.round(n*10)/10).join(' ') }; return JSON.stringify({early: !!document.querySelector('.early:not([hidden])'), bar:r('.top-bar'), sel:r('.selvedge'), panel:r('.panel'), wall:r('.wall'), strip:r('.strip-row'), standing:r('.standing'), line:r('.gesture-line'), table: r('.side-table'), cloth:r('.hung-cloth')}) })()`;
for (const [w, h, scheme, touch] of [
  [1440, 900, 'light', false],
  [1440, 900, 'dark', false],
  [390, 844, 'light', true],
  [390, 844, 'dark', true],
  [1024, 768, 'light', true],
  [800, 600, 'light', false],
  [900, 420, 'light', true],
  [360, 640, 'light', true],
] as const) {
  const ctx = await browser.newContext({
    viewport: { width: w, height: h },
    colorScheme: scheme,
    hasTouch: touch,
    isMobile: touch && w < 500,
    serviceWorkers: 'block',
  });
  for (const visit of ['new', 'again']) {
    const page = await ctx.newPage();
    page.on('console', (m) => {
      if (m.type() === 'error') console.log('ERR', m.text());
    });
    page.on('pageerror', (e) => console.log('PAGEERR', e.message));
    let go = () => {};
    const gate = new Promise<void>((r) => (go = r));
    await page.route('**/first-*.js', async (route) => {
      await gate;
      await route.continue();
    });
    void page.goto(url);
    await page.waitForTimeout(2500);
    const a = await page.evaluate(rects);
    await page.screenshot({ path: `/tmp/speed/s-${w}-${scheme}-${visit}-early.png` });
    go();
    await page.locator('.wall-area [data-cell]').first().waitFor({ state: 'attached' });
    const b = await page.evaluate(rects);
    await page.waitForTimeout(2500);
    const c = await page.evaluate(rects);
    await page.screenshot({ path: `/tmp/speed/s-${w}-${scheme}-${visit}-live.png` });
    console.log(w, h, scheme, visit);
    console.log(a);
    console.log(b === c ? '=' : b);
    console.log(c);
    await page.goto('about:blank');
    await page.close();
  }
  await ctx.close();
}
await browser.close();
await server.close();
