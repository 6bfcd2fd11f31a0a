// What the worker that reads photographs does for each job. It has the photograph last asked about at hand, decoded. What is read of it
// is decided in photo/.
import { phrase } from '../../model/phrase';
import { ok, type Result } from '../../model/result';
import { stripPatch } from '../../photo/block/strip';
import { type FabricWish, readFabric } from '../../photo/fabric/readFabric';
import { DAYLIGHT, planeByDaylight } from '../../photo/light/light';
import { spotIn } from '../../photo/light/patch';
import { proposeWhite } from '../../photo/light/propose';
import { unevenOver } from '../../photo/light/unevenness';
import { cutOut, wholeFrame } from '../../photo/pixels/frame';
import { pixelsOf } from '../../photo/pixels/linear';
import type { Pixels } from '../../photo/pixels/pixels';
import { fitted, shrinkingTo } from '../../photo/pixels/resize';
import { frameOfTapped } from '../../photo/split/tapped';
import type { Answers } from '../workers/protocol';
import { blockAnswers } from './blockAnswers';
import { decodePhoto, encodedPicture } from './decode';
import type { FabricAsk, FabricFound, FabricRead, OpenedPhoto, PhotoJobs } from './photoJobs';
import type { Codec, OnPixels, Work } from './photoMeans';
import type { PhotoProgress, SentPhoto } from './sentPhoto';

/** Before and after are shown with the longer side this long. */
const LOOK = 320;

const OPENING: PhotoProgress = { doing: phrase('Opening the photograph'), share: null };
const READING: PhotoProgress = { doing: phrase('Reading the fabric'), share: null };

/** The answers of a worker of its own; it remembers one photograph. */
export function photoAnswers(
  { decode, encode }: Codec = { decode: decodePhoto, encode: encodedPicture },
): Answers<PhotoJobs> {
  let at: { readonly key: number; readonly pixels: Pixels } | null = null;
  const pixelsFor = async ({ key, bytes }: SentPhoto, work: Work): Promise<Result<Pixels>> => {
    if (at?.key === key) return ok(at.pixels);
    if (!bytes) throw new Error(`photograph ${key} was not sent`);
    work.tell(OPENING);
    at = null;
    const decoded = await decode(bytes);
    if (decoded.ok) at = { key, pixels: decoded.value };
    return decoded;
  };
  const on: OnPixels =
    <Ask extends { readonly photo: SentPhoto }, Value>(
      job: (pixels: Pixels, ask: Ask, work: Work) => Result<Value> | Promise<Result<Value>>,
    ) =>
    async (ask: Ask, work: Work): Promise<Result<Value>> => {
      const pixels = await pixelsFor(ask.photo, work);
      return pixels.ok ? job(pixels.value, ask, work) : pixels;
    };
  return {
    ...blockAnswers(on, encode),
    open: on(async (pixels, { longest }, work) => ok(await opened(pixels, longest, work, encode))),
    spot: on((pixels, { frame }) => ok(spotIn(pixels, frame))),
    tapped: on((pixels, { x, y, seed }) => frameOfTapped(pixels, x, y, seed)),
    fabric: on((pixels, { wish }, work) => readInFrame(pixels, wish, work, encode)),
    strip: on((pixels, { strip, wedge }, work) => {
      const patch = stripPatch(pixels, strip, wedge);
      if (!patch.ok) return patch;
      const { pixels: cut, perInch } = patch.value;
      const wish = { frame: wholeFrame(cut), light: DAYLIGHT, uneven: null, perInch, seed: 1 };
      return readAndEncoded(cut, wish, work, encode);
    }),
  };
}

async function opened(
  pixels: Pixels,
  longest: number,
  work: Work,
  encode: Codec['encode'],
): Promise<OpenedPhoto> {
  const { width, height } = pixels;
  const small = await work.run(shrinkingTo(pixels, longest), (_, due) => {
    if (due) work.tell(OPENING);
  });
  const shown = await encode(pixelsOf(small));
  return { width, height, shown, white: proposeWhite(pixels) };
}

async function readInFrame(
  pixels: Pixels,
  { white, ...rest }: FabricAsk,
  work: Work,
  encode: Codec['encode'],
): Promise<Result<FabricFound>> {
  work.tell(READING);
  const uneven = unevenOver(pixels, rest.frame, white, rest.seed);
  const read = await readAndEncoded(pixels, { ...rest, uneven }, work, encode);
  if (!read.ok) return read;
  const { frame, light } = rest;
  const size = fitted(Math.round(frame.width), Math.round(frame.height), LOOK);
  const patch = cutOut(pixels, frame, size.width, size.height);
  return ok({
    ...read.value,
    before: await encode(pixelsOf(patch)),
    after: await encode(pixelsOf(planeByDaylight(patch, light))),
  });
}

async function readAndEncoded(
  pixels: Pixels,
  wish: FabricWish,
  work: Work,
  encode: Codec['encode'],
): Promise<Result<FabricRead>> {
  work.tell(READING);
  const read = await work.run(readFabric(pixels, wish), (_, due) => {
    if (due) work.tell(READING);
  });
  if (!read.ok) return read;
  const { tile, ...reading } = read.value;
  return ok({ ...reading, tile: await encode(tile) });
}
