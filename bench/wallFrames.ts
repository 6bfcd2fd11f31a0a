// Turning, swapping, dragging and panning on a wall of 400 blocks in a real browser, of printed and of photographed fabrics, and of blocks
// that are shown by their pictures: the frames must come as they do on an empty page.
import type { Browser, Page } from 'playwright';
import sharp from 'sharp';
import { wedgeBands } from '../src/geometry/bands';
import type { PictureId, StoredPicture } from '../src/model/picture/picture';
import { takePicture } from '../src/model/picture/takePicture';
import type { Project, ShownBand } from '../src/model/project';
import { writeProject } from '../src/model/reading/read';
import { scrappyTop } from '../tests/balance/tops';
import { type Frames, frameRow, framesIn } from './frames';
import { freshPage, openFile, PAUSE, printed } from './page';
import type { BenchRow, Extent } from './row';

const ROWS = 20;
const COLUMNS = 20;
/** How often each act is played, by extent: about a hundred frames in a sample. */
const TIMES = { sample: 3, all: 8 };
/** Pixels on a side of the tile of a photographed fabric. */
const TILE = 256;
/** Pixels on a side of the picture of a block of a photographed wall. */
const BLOCK = 420;

/** Plays turns, swaps and drags on the largest wall, printed and photographed, and measures from frame to frame. */
export async function wallFrameRows(
  browser: Browser,
  url: string,
  empty: Frames,
  extent: Extent,
): Promise<BenchRow[]> {
  const framesOf = framesIn(TIMES[extent]);
  const rows: BenchRow[] = [];
  for (const [cloth, text] of [
    ['printed', writeProject(printed(ROWS, COLUMNS))],
    ['photographed', await photographed(ROWS, COLUMNS)],
    ['pictured', await pictured(ROWS, COLUMNS)],
  ] as const) {
    const page = await freshPage(browser);
    await page.goto(url);
    await openFile(page, text);
    // The blocks come in parts.
    await page.waitForSelector(`[data-block="${ROWS * COLUMNS}"]`, { state: 'attached' });
    await page.waitForTimeout(PAUSE);
    const wall = `${ROWS * COLUMNS} ${cloth} blocks`;
    rows.push(
      frameRow(`a turn among ${wall}`, await framesOf(page, (time) => turn(page, time)), empty),
      frameRow(`a swap among ${wall}`, await framesOf(page, () => swap(page)), empty),
      frameRow(`a drag among ${wall}`, await framesOf(page, (time) => drag(page, time)), empty),
      frameRow(`a pan over ${wall}`, await framesOf(page, () => pan(page), 0), empty),
    );
    await page.close();
  }
  return rows;
}

/** Carries a block over its neighbours and lets it go where it was. */
async function drag(page: Page, time: number): Promise<void> {
  const box = (await page.locator(`[data-block="${time + 2}"]`).boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 12; step += 1) await page.mouse.move(x + step * 12, y + step * 4);
  for (let step = 12; step >= 0; step -= 1) await page.mouse.move(x + step * 12, y + step * 4);
  await page.mouse.up();
}

async function turn(page: Page, time: number): Promise<void> {
  await page.locator(`[data-block="${time + 2}"]`).focus();
  await page.keyboard.press('r');
}

/** Zooms in where that was not done, and pans to one side and back. */
async function pan(page: Page): Promise<void> {
  await page.mouse.move(720, 450);
  await page.mouse.wheel(0, -120);
  await page.keyboard.down('Shift');
  for (const way of [1, -1]) for (let step = 0; step < 12; step += 1) await page.mouse.wheel(0, way * 30);
  await page.keyboard.up('Shift');
}

/** Swaps two blocks side by side. */
async function swap(page: Page): Promise<void> {
  await page.locator('[data-cell="5"]').focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Space');
}

/** A picture of a seed's own: stripes with noise, blurred as cloth is. */
async function takenPicture(side: number, seed: number): Promise<{ id: PictureId; picture: StoredPicture }> {
  const data = new Uint8Array(side * side * 3).map(
    (_, byte) => (byte * (seed + 3) + (byte >> 8) * (7 + (seed >> 7))) % 251,
  );
  const raw = { width: side, height: side, channels: 3 as const };
  const taken = takePicture(await sharp(data, { raw }).blur(2).jpeg({ quality: 85 }).toBuffer());
  if (!taken.ok) throw new Error(taken.problems[0]!.message.say);
  return taken.value;
}

/** The file of a top whose blocks are all shown by their pictures, each by one of its own. */
async function pictured(rows: number, columns: number): Promise<string> {
  const project = scrappyTop({ rows, columns, seed: 5 });
  const pictures = new Map<PictureId, StoredPicture>();
  const blocks: Project['blocks'] = [];
  for (const [at, block] of project.blocks.entries()) {
    const { id, picture } = await takenPicture(BLOCK, at);
    pictures.set(id, picture);
    const { places, ...rest } = block;
    const wedges = places.map((place) => ({ bands: bandsShown(project, place) }));
    blocks.push({ ...rest, kind: 'pictured', picture: id, wedges, places: [], progress: 'squared' });
  }
  return writeProject({ ...project, blocks }, pictures);
}

function bandsShown(project: Project, place: Project['blocks'][number]['places'][number]): ShownBand[] {
  const strips = project.stripSets.find(({ id }) => id === place?.set)?.strips ?? [];
  const bands = place ? wedgeBands(strips, place.tip, project.wedge) : [];
  return bands.map(({ fabric, outer, inner }) => ({ fabric, width: outer - inner, sure: 1 }));
}

/** The file of a top in which every fabric is photographed, each from a tile of its own. */
async function photographed(rows: number, columns: number): Promise<string> {
  const project = scrappyTop({ rows, columns, seed: 5 });
  const pictures = new Map<PictureId, StoredPicture>();
  const fabrics = await Promise.all(
    project.fabrics.map(async (fabric, at) => {
      const { id, picture } = await takenPicture(TILE, at);
      pictures.set(id, picture);
      const colours = [{ hex: fabric.colour, share: 1 }];
      const photo = {
        picture: id,
        width: 3,
        height: 3,
        angle: 0,
        colours,
        spread: 5,
        scale: null,
      };
      return { ...fabric, cloth: { kind: 'photo' as const, photo } };
    }),
  );
  return writeProject({ ...project, fabrics }, pictures);
}
