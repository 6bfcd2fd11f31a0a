// Looks at finished pictures with other programs: an SVG drawn by resvg, a PDF painted by PDF.js.
import { Resvg } from '@resvg/resvg-js';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** Draws an SVG at so many pixels to the unit, and gives the colour at a place in units. */
export function lookAtSvg(svg: string, perUnit: number) {
  const [, left = '', top = '', across = ''] = /viewBox="(-?[\d.]+) (-?[\d.]+) ([\d.]+)/.exec(svg) ?? [];
  const value = Math.round(Number(across) * perUnit);
  const { pixels, width } = new Resvg(svg, { fitTo: { mode: 'width', value } }).render();
  return (x: number, y: number) => {
    const at = Math.floor((y - Number(top)) * perUnit) * width + Math.floor((x - Number(left)) * perUnit);
    return [...pixels.subarray(4 * at, 4 * at + 3)] as [number, number, number];
  };
}

/** The colour at a place in page inches from the upper left. */
export async function lookAtPdf(bytes: Uint8Array): Promise<(x: number, y: number) => number[]> {
  const pdf = await getDocument({ data: bytes }).promise;
  const page = await pdf.getPage(1);
  const viewport = page.getViewport({ scale: 2 });
  const factory = pdf.canvasFactory as {
    create(width: number, height: number): { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D };
  };
  const { canvas, context } = factory.create(viewport.width, viewport.height);
  await page.render({ canvas, canvasContext: context, viewport }).promise;
  const { data, width } = context.getImageData(0, 0, viewport.width, viewport.height);
  await pdf.loadingTask.destroy();
  return (x, y) => {
    const at = (Math.floor(y * 144) * width + Math.floor(x * 144)) * 4;
    return [...data.subarray(at, at + 3)];
  };
}
