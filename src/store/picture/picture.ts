// Makes pictures of the top: the SVG text, and a PNG drawn from it in the browser. drawing/svg.ts decides what is drawn,
// drawing/pictureText.ts the words that go with it.

import { drawProject } from '../../drawing/drawProject';
import { dataHrefs } from '../../drawing/photos';
import { drawingToSvg } from '../../drawing/svg';
import { phrase } from '../../model/phrase';
import type { Pictures } from '../../model/picture/picture';
import type { Project } from '../../model/project';
import { failed, ok, type Result } from '../../model/result';
import { balanceAtOnce } from '../analysis/atOnce';
import { withDensity } from './pngDensity';

export interface PictureOptions {
  /** A line under the top; null for none. See pictureCaption. */
  readonly caption: string | null;
  /** Whether findings are marked. */
  readonly marks: boolean;
}

export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

/** Dots to the inch that print shops require (common practice, no source). */
export const PRINT_DENSITY = 300;
/** The most pixels on a side; above about this number browsers give an empty picture without an error. */
export const MOST_PIXELS = 16_384;
const LEAST_PIXELS = 100;
/** Pixels that are drawn at once at first, so that the page stays responsive. */
const STRIPE = 150_000;
/** Milliseconds that a stripe may take before it is made lower; one that takes less than half of it is made higher. */
const LONG = 32;

/** The picture as SVG text with real sizes, one unit to the inch. */
export function pictureSvg(project: Project, pictures: Pictures, { caption, marks }: PictureOptions): string {
  return drawingToSvg(drawProject(project), {
    title: project.name,
    // A picture that is itself drawn as a picture can fetch nothing: its own must be in it.
    hrefOf: dataHrefs(pictures),
    ...(caption === null ? {} : { caption }),
    marks: marks ? balanceAtOnce(project).findings.flatMap((finding) => finding.marks) : [],
  });
}

/** Width and height of the SVG in its own units, which are inches. */
export function viewSize(svg: string): { width: number; height: number } {
  const [, width, height] = /viewBox="-?[\d.]+ -?[\d.]+ ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  if (width === undefined || height === undefined) throw new Error('viewSize: the SVG has no viewBox');
  return { width: Number(width), height: Number(height) };
}

/** The size of a picture of this width in pixels, or why a browser cannot draw it. */
export function pixelSize(svg: string, width: number): Result<PixelSize> {
  const view = viewSize(svg);
  const height = Math.round((width * view.height) / view.width);
  const widest = widestPicture(svg);
  if (width <= widest && width >= LEAST_PIXELS) return ok({ width, height });
  if (width < LEAST_PIXELS) {
    return failed(
      'too-small',
      'picture',
      phrase('A picture is at least {least} pixels wide.', { least: LEAST_PIXELS }),
    );
  }
  const say =
    'Browsers draw pictures up to {most} pixels on a side. For this top that is {widest} wide; take that, or the SVG, which has no limit.';
  return failed('too-large', 'picture', phrase(say, { most: MOST_PIXELS, widest }));
}

/** The width in pixels of the largest PNG of this picture that browsers can draw. */
export function widestPicture(svg: string): number {
  const view = viewSize(svg);
  return Math.floor(Math.min(MOST_PIXELS, (MOST_PIXELS * view.width) / view.height));
}

/** The SVG with its size in pixels instead of inches, so that it is drawn sharply at exactly that size. */
export function sizedInPixels(svg: string, size: PixelSize): string {
  return svg.replace(/ width="[\d.]+in" height="[\d.]+in"/, ` width="${size.width}" height="${size.height}"`);
}

export type PictureStage = 'drawing' | 'packing';

/** Who waits for a picture: hears how far it is, and may stop it. */
export interface Waiting {
  readonly onStage: (stage: PictureStage) => void;
  /** Gets the share that is drawn, 0 to 1. */
  readonly onShare: (share: number) => void;
  readonly signal: AbortSignal;
}

/** Code of the problem of a picture that was stopped. */
export const STOPPED = 'stopped';

/** Draws the SVG as a PNG for PRINT_DENSITY. Browser only. Never rejects: it returns a failure, or that it was stopped, as a problem. */
export async function drawPng(svg: string, size: PixelSize, waiting: Waiting): Promise<Result<Blob>> {
  const { onStage, signal } = waiting;
  const stopped = () => failed(STOPPED, 'picture', phrase('Stopped. There is no picture.'));
  const tooLarge = () =>
    failed(
      'not-drawn',
      'picture',
      phrase('This browser could not draw a picture of {width} × {height} pixels. Try a smaller one.', {
        width: size.width,
        height: size.height,
      }),
    );
  const address = URL.createObjectURL(new Blob([sizedInPixels(svg, size)], { type: 'image/svg+xml' }));
  try {
    onStage('drawing');
    const image = await loaded(address);
    await painted();
    const canvas = document.createElement('canvas');
    canvas.width = size.width;
    canvas.height = size.height;
    const context = canvas.getContext('2d');
    if (!context) return tooLarge();
    // The browser makes the canvas now, in a turn of its own.
    context.clearRect(0, 0, 1, 1);
    await turn();
    const drawn = await drawnInStripes(context, image, size, waiting);
    if (signal.aborted) return stopped();
    if (!drawn) return tooLarge();
    onStage('packing');
    await painted();
    const blob = await new Promise<Blob | null>((done) => {
      canvas.toBlob(done, 'image/png');
    });
    canvas.width = 0;
    if (signal.aborted) return stopped();
    return blob ? ok(await withDensity(blob, PRINT_DENSITY)) : tooLarge();
  } catch {
    return tooLarge();
  } finally {
    URL.revokeObjectURL(address);
  }
}

/**
 * Draws an image stripe by stripe, with a turn for the page between two; false where the browser cannot draw it at this size, or it was
 * stopped. Chromium draws only what shows of the image, WebKit all of it each time (58 times for a page of 2,400 pixels): there the
 * stripes grow.
 */
async function drawnInStripes(
  context: CanvasRenderingContext2D,
  image: HTMLImageElement,
  { width, height }: PixelSize,
  { signal, onShare }: Waiting,
): Promise<boolean> {
  const first = Math.max(1, Math.floor(STRIPE / width));
  const next = growingStripes(first);
  // With the first line the browser makes ready what all others need.
  let high = 1;
  for (let top = 0; top < height; ) {
    if (signal.aborted) return false;
    onShare(top / height);
    const bottom = Math.min(height, top + high);
    const began = performance.now();
    drawStripe(context, image, { width, height }, { top, bottom });
    // Asked for a pixel, the browser draws now. A canvas too large for it stays empty without an error; a drawn one is opaque everywhere.
    if (context.getImageData(width - 1, bottom - 1, 1, 1).data[3] !== 255) return false;
    high = top === 0 ? first : next(performance.now() - began);
    top = bottom;
    await turn();
  }
  return true;
}

function drawStripe(
  context: CanvasRenderingContext2D,
  image: HTMLImageElement,
  { width, height }: PixelSize,
  { top, bottom }: { readonly top: number; readonly bottom: number },
): void {
  context.save();
  context.beginPath();
  context.rect(0, top, width, bottom - top);
  context.clip();
  context.fillStyle = '#ffffff';
  context.fillRect(0, top, width, bottom - top);
  context.drawImage(image, 0, 0, width, height);
  context.restore();
}

/** From how long each stripe took, how high the next one is: about LONG, or ever higher where a stripe takes its time whatever its height. */
export function growingStripes(first: number): (took: number) => number {
  const drawn: Stripe[] = [];
  let high = first;
  return (took) => {
    drawn.push({ high, took });
    if (2 * took <= LONG || (took > LONG && takesItAnyway(drawn))) high *= 2;
    else if (took > LONG) high = Math.max(1, Math.floor(high / 2));
    return high;
  };
}

interface Stripe {
  readonly high: number;
  readonly took: number;
}

/**
 * Whether a stripe takes too long whatever its height: a straight line through the lowest and the highest says so. What else computes
 * only adds to a time, so that the least of each height counts. The very first tells by itself, where it takes far too long.
 */
function takesItAnyway(drawn: readonly Stripe[]): boolean {
  const heights = drawn.map(({ high }) => high);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const least = (of: number) =>
    Math.min(...drawn.filter((stripe) => stripe.high === of).map(({ took }) => took));
  if (low === high) return drawn.length === 1 && least(low) > 4 * LONG;
  const line = Math.max(0, (least(high) - least(low)) / (high - low));
  // The farther apart they are, the surer the line.
  return least(low) - line * low > LONG * (1 + low / high);
}

/** Lets the page have a turn. */
function turn(): Promise<void> {
  return new Promise((done) => {
    setTimeout(done, 0);
  });
}

function loaded(address: string): Promise<HTMLImageElement> {
  return new Promise((done, fail) => {
    const image = new Image();
    image.onload = () => done(image);
    image.onerror = () => fail(new Error('loaded: the SVG could not be read as an image'));
    image.src = address;
  });
}

/** Lets the screen show the new stage before the long work begins. */
function painted(): Promise<void> {
  return new Promise((done) => {
    setTimeout(done, 30);
  });
}
