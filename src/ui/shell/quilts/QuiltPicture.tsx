// A small picture of a quilt in a list, drawn when it comes into sight, one quilt after the other, so that a list of large quilts
// opens at once and scrolls on.
import { FileWarning } from 'lucide-react';
import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { type Thumbnail, thumbnailOf } from '../../../drawing/thumbnail';
import type { Project } from '../../../model/project';

/** Side of the square that the picture lies in, CSS pixels, unless another is given. */
const SIDE = 52;
/** Pixels of the screen to one of CSS that it is drawn for. */
const SHARP = 2;

interface Props {
  /** What the picture is of; the same key is the same picture. */
  of: string;
  /** Gives the quilt; null where it is damaged. */
  open: () => Promise<Project | null>;
  side?: number;
}

type Picture = { readonly address: string } | 'damaged';

const drawn = new Map<string, Picture>();
let last: Promise<unknown> = Promise.resolve();

export function QuiltPicture({ of, open, side = SIDE }: Props) {
  const frame = useRef<HTMLSpanElement>(null);
  const [picture, setPicture] = useState<{ of: string; picture: Picture } | null>(null);
  const shown = drawn.get(of) ?? (picture?.of === of ? picture.picture : null);
  const there = shown !== null;
  const draw = useEffectEvent(() => pictureOf(open, side));
  useEffect(() => {
    const element = frame.current;
    if (there || !element) return undefined;
    let left = false;
    const observer = new IntersectionObserver((entries) => {
      if (!entries.some((entry) => entry.isIntersecting)) return;
      observer.disconnect();
      last = last.then(atLeisure).then(async () => {
        if (left) return;
        const made = drawn.get(of) ?? (await draw());
        drawn.set(of, made);
        if (!left) setPicture({ of, picture: made });
      });
    });
    observer.observe(element);
    return () => {
      left = true;
      observer.disconnect();
    };
  }, [of, there]);
  return (
    <span className="quilt-picture" ref={frame} aria-hidden>
      {shown === 'damaged' ? <FileWarning size={20} /> : shown ? <img src={shown.address} alt="" /> : null}
    </span>
  );
}

/** Draws the picture. Whatever goes wrong, the quilt keeps its place in the list. */
async function pictureOf(open: Props['open'], side: number): Promise<Picture> {
  try {
    const project = await open();
    return project ? { address: painted(thumbnailOf(project), side) } : 'damaged';
  } catch {
    return 'damaged';
  }
}

function painted({ width, height, fills }: Thumbnail, side: number): string {
  const scale = (side * SHARP) / Math.max(width, height, 1);
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const pen = canvas.getContext('2d');
  if (!pen) return '';
  pen.scale(scale, scale);
  for (const { colour, outlines } of fills) {
    pen.fillStyle = colour;
    pen.strokeStyle = colour;
    // A thin line of its own colour closes the seams between neighbours.
    pen.lineWidth = 0.5 / scale;
    pen.beginPath();
    for (const outline of outlines) {
      for (const [at, { x, y }] of outline.entries()) {
        if (at === 0) pen.moveTo(x, y);
        else pen.lineTo(x, y);
      }
      pen.closePath();
    }
    pen.fill();
    pen.stroke();
  }
  return canvas.toDataURL();
}

/** Resolves when the page has nothing more urgent to do. */
function atLeisure(): Promise<void> {
  return new Promise((done) => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => done(), { timeout: 400 });
    else setTimeout(done, 30);
  });
}
