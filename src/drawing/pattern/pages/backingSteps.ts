// How the backing is sewn from its lengths, step by step. Pressed open and without selvages by common practice, no source.
import type { BackingLayout } from '../../../cutting/yardage/backing';
import type { Writing } from '../writing';
import { size } from '../writing';

/** The steps in words; a backing of one width has nothing to join. */
export function backingSteps(layout: BackingLayout, writing: Pick<Writing, 'project' | 'say'>): string[] {
  const { project, say } = writing;
  const values = {
    widths: layout.widths,
    sections: layout.sections,
    seam: { seam: project.buying.backing.seam },
    cloth: { inches: layout.cuts[0]?.across ?? 0 },
    ...size(layout.size.width, layout.size.height),
  };
  if (layout.widths === 1) {
    return [
      say(
        'Cut the selvages off: they are woven tighter and would pucker. {cloth} of width must be left.',
        values,
      ),
      say(
        'One width is wide enough, so nothing is joined. Press it and trim it to {width} × {height}.',
        values,
      ),
    ];
  }
  return [
    say('Cut the selvages off every length: they are woven tighter and would pucker. {cloth} of width must be left.', values),
    ...pieced(layout, values, writing),
    say(joinSentence(layout), values),
    say(pressSentence(layout)),
    say('Trim the back to {width} × {height}, its corners square.', values),
  ]; // biome-ignore format: a list
}

/** The last width is joined first, where it is of several pieces. */
function pieced(
  layout: BackingLayout,
  values: Record<string, number | object>,
  { project, say }: Pick<Writing, 'project' | 'say'>,
): string[] {
  const { seam } = project.buying.backing;
  const [, last] = layout.cuts;
  if (layout.sections === 1 || !last) return [];
  // What is over, less than a step of the ruler for every piece, goes when the back is trimmed.
  const whole = layout.sections * last.along - (layout.sections - 1) * 2 * seam;
  return [
    say('First make the last width: sew its {sections} pieces, {wide} × {long}, end to end with a {seam} seam to one length of {whole}, and press the seams open.', {
      ...values, wide: { inches: last.across }, long: { inches: last.along }, whole: { inches: whole },
    }),
  ]; // biome-ignore format: a list
}

function pressSentence({ run, widths }: BackingLayout): string {
  if (widths === 2) {
    return run === 'down'
      ? 'Press this seam open, so that it lies flat under the quilting. It runs down the quilt.'
      : 'Press this seam open, so that it lies flat under the quilting. It runs across the quilt.';
  }
  return run === 'down'
    ? 'Press these seams open, so that they lie flat under the quilting. They run down the quilt.'
    : 'Press these seams open, so that they lie flat under the quilting. They run across the quilt.';
}

function joinSentence({ widths, sections }: BackingLayout): string {
  if (widths === 2) {
    return sections === 1
      ? 'Pin both lengths right sides together along a long edge, from the middle outwards, and sew them with a {seam} seam.'
      : 'Pin it to the whole length, right sides together along a long edge, from the middle outwards, and sew them with a {seam} seam.';
  }
  return sections === 1
    ? 'Pin the {widths} lengths right sides together along their long edges, one after the other, from the middle outwards, and sew each with a {seam} seam.'
    : 'Pin the lengths right sides together along their long edges, one after the other and the pieced one last, from the middle outwards, and sew each with a {seam} seam.';
}
