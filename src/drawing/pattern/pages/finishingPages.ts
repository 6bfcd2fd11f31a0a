// Finishing: the backing with its seams, batting and layers, quilting, binding.
import { backingName } from '../../../cutting/yardage/backingYardage';
import { bindingRun } from '../../../cutting/yardage/binding';
import { clothText } from '../../../cutting/yardage/clothLength';
import { onRuler } from '../../../cutting/yardage/neededPiece';
import { layOut } from '../../../geometry/setting';
import { sellingUnit } from '../../../model/buying';
import { phrase } from '../../../model/phrase';
import type { Composer } from '../composer';
import { line, textWidth } from '../lettering';
import { DASHED, EDGE, ink, STYLES, WASH } from '../look';
import type { Figure, Mark } from '../page';
import { shifted } from '../page';
import { measure } from '../signs';
import { nameOf, size, type Writing } from '../writing';
import { backingSteps } from './backingSteps';

export function finishingPages(composer: Composer, writing: Writing): void {
  const { yardage, say, project } = writing;
  composer.begin(say('Finishing'));
  const { backing, batting } = yardage;
  if (backing) {
    composer.heading(say('Backing and batting'));
    const { width, height } = backing.layout.size;
    composer.bullets([
      backing.apart
        ? say('{backing}: {cloth}.', { backing: say(backingName(backing)), cloth: clothText(backing.apart.buy.inches, sellingUnit(project)) })
        : say('{backing}, cut with everything else of that fabric.', { backing: say(backingName(backing)) }),
      ...backing.layout.why.map((why) => say(why)),
      ...(backing.apart?.buy.why ?? []).map((why) => say(why)),
      ...(batting.length > 0
        ? [say('Batting at least {width} × {height}: {names}.', { ...size(width, height), names: { list: batting.map((one) => say(one.name)) } })]
        : [say(
            project.preferences.unit === 'in'
              ? 'Batting at least {width} × {height}: no package is so large; take it off the roll or join two.'
              : 'Batting at least {width} × {height}, off the roll.',
            size(width, height),
          )]),
    ]); // biome-ignore format: a list
    const figure = backingFigure(writing);
    if (figure) composer.add(figure, 0.16, 0, (composer.width - figure.width) / 2);
    composer.stepsUnder(say('Make the backing'), backingSteps(backing.layout, writing));
  }
  composer.stepsUnder(say('Layers and quilting'), [
    say('Press the top for the last time, and clip loose threads.'),
    say('Spread the backing wrong side up and hold it flat without stretching; lay on the batting, then the top right side up.'),
    say('Baste from the middle outwards with pins or thread.'),
    project.setting.sashing.where === 'none'
      ? say('Quilt. Without sashing the top has many seams and is heavy, so light quilting suits it. Keep to the distance the batting’s package gives.')
      : say('Quilt, keeping to the distance the batting’s package gives.'),
    say('Trim batting and backing even with the edge of the top, its corners square.'),
  ]); // biome-ignore format: a list
  binding(composer, writing);
}

function binding(composer: Composer, writing: Writing): void {
  const { project, yardage, say } = writing;
  const chosen = project.setting.binding;
  const { unit } = project.preferences;
  if (!chosen) {
    composer.heading(say('Binding'), 0.5);
    const { width, height } = layOut(project);
    const { why } = bindingRun(width, height, project.buying.bindingExtra, unit);
    const none = say('No binding is chosen for this quilt yet.');
    composer.paragraph([none, ...why.map((one) => say(one))].join(' '));
    return;
  }
  const lines = yardage.fabrics.flatMap((one) => one.lines.filter(({ step }) => step === 'binding'));
  const why = lines.flatMap((line) => line.why);
  const isJoined = lines.some(({ join }) => join !== null);
  const cutWidth = onRuler(chosen.cutWidth, unit);
  const values = { width: { inches: cutWidth }, fabric: nameOf(writing, chosen.fabric) };
  composer.stepsUnder(say('Binding'), [
    [say(phrase(isJoined ? 'Cut strips of {fabric} {width} wide.' : 'Cut one strip of {fabric} {width} wide.', values)), ...why.map((one) => say(one))].join(' '),
    isJoined
      ? say('Join them at 45 degrees to one length, press the seams open, and fold the length in half, wrong sides together.')
      : say('Fold the strip in half along its length, wrong sides together.'),
    say('Sew it to the front, raw edges even, with a {seam} seam; fold a mitre at every corner; join the ends.', { seam: { seam: project.wedge.outerSeam } }),
    say('Fold it over the edge and sew it down on the back. Sew on a label with the name, the year and how to wash it.'),
  ]); // biome-ignore format: a list
}

/** The back from above: its widths, its size, and where the top lies on it. */
function backingFigure({ project, yardage, say, type }: Writing): Figure | null {
  const layout = yardage.backing?.layout;
  if (!layout) return null;
  const { width, height } = layout.size;
  const scale = Math.min(3.2 / width, 1.9 / height);
  const words = (inches: number) => say('{length}', { length: { inches } });
  const marks: Mark[] = layout.panels.map(({ x, y, width: w, height: h }): Mark => {
    const outline = [{ x, y }, { x: x + w, y }, { x: x + w, y: y + h }, { x, y: y + h }]; // biome-ignore format: a box
    return {
      kind: 'shape',
      outlines: [outline.map((point) => ({ x: point.x * scale, y: point.y * scale }))],
      fill: ink(WASH),
      stroke: EDGE,
    };
  });
  const over = project.buying.backing.overhang * scale;
  // The height's figure stands clear of the edge it measures.
  const beside = textWidth(words(height), STYLES.labelStrong, type) / 2 + 0.12;
  const [right, bottom] = [width * scale, height * scale];
  marks.push(
    {
      kind: 'line',
      points: [{ x: over, y: over }, { x: right - over, y: over }, { x: right - over, y: bottom - over }, { x: over, y: bottom - over }, { x: over, y: over }],
      stroke: DASHED,
    },
    ...line(say('top'), STYLES.label, over + 0.06, over + 0.15, type),
    ...measure({ x: 0, y: bottom + 0.14 }, { x: right, y: bottom + 0.14 }, words(width), STYLES.labelStrong, type),
    ...measure({ x: -beside, y: 0 }, { x: -beside, y: bottom }, words(height), STYLES.labelStrong, type),
  ); // biome-ignore format: four marks
  return { width: right + 2 * beside, height: bottom + 0.26, marks: shifted(marks, 2 * beside, 0) };
}
