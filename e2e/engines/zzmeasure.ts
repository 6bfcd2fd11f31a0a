import { spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { preview } from 'vite';
import { Browser } from './browser';
import { freePort, pause } from './driver';
import { openFirefox } from './firefox';
import { openWebKit } from './webkit';
const which = process.argv[2]!;
const folder = mkdtempSync(join(tmpdir(), 'meas-'));
const port = await freePort();
const server = await preview({ logLevel: 'silent', preview: { port, strictPort: true, host: '127.0.0.1' } });
const x = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1600x1000x24', '-nolisten', 'tcp'], { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
const display = await new Promise<string>((done) => x.stdio[3]!.once('data', (n) => done(`:${String(n).trim()}`)));
const driver = await (which === 'webkit' ? openWebKit : openFirefox)({ folder, display, dark: false });
const browser = new Browser(driver);
await browser.resize(1280, 800);
const url = `http://127.0.0.1:${port}/`;
await browser.go(url);
await browser.until({ css: '[data-cell]' });
const say = (...w: unknown[]) => console.log(which, ...w);
const frames = `
 window.frames0 = []; window.stopFrames = false; let last = performance.now();
 const tick = (t) => { const n = performance.now(); frames0.push(n - last); last = n; if (!stopFrames) requestAnimationFrame(tick); };
 requestAnimationFrame(tick);`;
const report = async (name: string) => {
  const f = await browser.run<number[]>('window.stopFrames = true; return window.frames0');
  const s = f.slice(1).sort((a, b) => a - b);
  say(name, 'frames', s.length, 'median', s[Math.floor(s.length / 2)]?.toFixed(0), 'p95', s[Math.floor(s.length * 0.95)]?.toFixed(0), 'max', s.at(-1)?.toFixed(0), 'mean', (s.reduce((a,b)=>a+b,0)/s.length).toFixed(0));
};
const zoom = async (name: string, css: string) => {
  const [x0, y0] = await browser.run<[number, number]>(`const b = document.querySelector('${css}').getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]`);
  for (const dir of [-1, 1]) {
    await browser.run(frames);
    // real wheel events made in the page, one a frame, 40 frames
    await browser.run(`const el = document.elementFromPoint(${x0}, ${y0}); let n = 0;
      const go = () => { el.dispatchEvent(new WheelEvent('wheel', { bubbles: true, cancelable: true, deltaY: ${dir} * 24, clientX: ${x0}, clientY: ${y0}, view: window })); n += 1; if (n < 40) requestAnimationFrame(go); else window.wheelDone = true; }; window.wheelDone = false; requestAnimationFrame(go);`);
    await browser.until(() => browser.run('return window.wheelDone'), 60_000);
    await report(`${name} zoom ${dir < 0 ? 'in' : 'out'}`);
    await pause(1500);
  }
};
const open = async (file: string, n: number) => {
  await browser.click({ css: '.project-button' });
  await browser.until({ css: '[role=dialog]' });
  await browser.file('input[type=file]', resolve(file));
  await browser.until({ css: '[data-cell]', name: `^Block ${n}, row` }, 60_000);
  await pause(4000);
};
if (process.argv.includes('zoom')) {
  await zoom('six', '.wall');
  await open('demo-data/plum-orchard.json', 80);
  await zoom('80', '.wall');
  if (process.argv[4]) { await open(process.argv[4], 400); await zoom('400', '.wall'); }
  await browser.go(`${url}icon.svg`);
  await browser.go(`data:text/html,<p>empty</p><div class=wall style="width:100px;height:100px"></div>`);
  await zoom('empty', '.wall');
}
if (process.argv.includes('png')) {
  await browser.run(`window.made = []; const make = URL.createObjectURL; URL.createObjectURL = (blob) => { made.push([blob.type, blob.size]); return make.call(URL, blob); };`);
  await browser.click({ css: 'button', name: '^Finishing', within: { css: '[aria-label="Order of work"]' } });
  await browser.click({ css: 'button', name: '^Picture', within: { css: '[aria-label="Parts of finishing"]' } });
  const sizes = await browser.run<string[]>('return [...document.querySelectorAll(".picture-sizes button, .picture-sizes label")].map((one) => one.textContent)');
  for (const size of sizes) {
    await browser.run(`window.made.length = 0; [...document.querySelectorAll(".picture-sizes button, .picture-sizes label")].find((one) => one.textContent === arguments[0]).click()`, size);
    await pause(500);
    const t = Date.now();
    await browser.click({ css: 'button', name: '^Save the picture' });
    await browser.until(() => browser.run('return window.made.some(([t]) => t === "image/png")'), 90_000);
    say('png', size, Date.now() - t, 'ms', JSON.stringify(await browser.run('return window.made')));
  }
}
if (process.argv.includes('fieldset')) {
  say(await browser.run(`const f = document.createElement('fieldset'); f.innerHTML; f.className='picture-sizes'; document.body.append(f); const s = getComputedStyle(f); return [s.marginBottom, s.paddingBottom, s.minHeight, s.borderBottomWidth, s.marginTop, f.getBoundingClientRect().height]`));
}
say('faults', driver.faults);
await browser.close();
x.kill();
await server.close();
process.exit(0);
