// The words that go with a picture of the top: its caption, and the text for those who do not see it. Every figure is
// computed from the project.
import { drawProject } from '../drawing/drawProject';
import { type FabricShare, fabricShares } from '../drawing/shares';
import { findFabric } from '../model/find';
import { counted, type Phrase, phrase } from '../model/phrase';
import type { Project } from '../model/project';

/** Fabrics named one by one in the text, those with the largest shares; the others are counted. */
const NAMED = 8;

/** Name, finished size and blocks in one line. */
export function pictureCaption(project: Project): Phrase {
  const { width, height, blocks } = drawProject(project);
  return phrase('{name} · {width} × {height} · {blocks}', {
    name: project.name,
    width: { inches: width },
    height: { inches: height },
    blocks: counted(blocks.length, '1 block', '{count} blocks'),
  });
}

/** What is seen, in a few sentences: size and setting, the blocks, the fabrics from light to dark. */
export function alternativeText(project: Project): Phrase[] {
  const drawing = drawProject(project);
  const { rows, columns } = project.wall;
  const said = [
    counted(
      drawing.blocks.length,
      '{name}: a quilt top with 1 block in {rows} rows of {columns}, {width} by {height} finished.',
      '{name}: a quilt top with {count} blocks in {rows} rows of {columns}, {width} by {height} finished.',
      {
        name: project.name,
        rows,
        columns,
        width: { inches: drawing.width },
        height: { inches: drawing.height },
      },
    ),
  ];
  if (drawing.blocks.length > 0) said.push(blockSentence(project));
  const { sashing, borders } = project.setting;
  if (sashing.where !== 'none') {
    const say =
      sashing.where === 'around'
        ? 'Sashing of {fabric}, {width} wide, runs between the blocks and around them.'
        : 'Sashing of {fabric}, {width} wide, runs between the blocks.';
    said.push(phrase(say, { fabric: nameOf(project, sashing.fabric), width: { inches: sashing.width } }));
  }
  borders.forEach((border, index) => {
    const values = { fabric: nameOf(project, border.fabric), width: { inches: border.width } };
    said.push(
      phrase(
        index === 0
          ? 'A border of {fabric}, {width} wide.'
          : 'Outside it a border of {fabric}, {width} wide.',
        values,
      ),
    );
  });
  return [...said, ...fabricSentences(project)];
}

function blockSentence(project: Project): Phrase {
  const { perBlock } = project.wedge;
  const own = project.blocks.some((block) => block.cornerFabric !== null);
  const values = { count: perBlock, fabric: nameOf(project, project.setting.cornerFabric) };
  return phrase(
    own
      ? 'Each block is a ring of {count} wedges pieced from strips, with corners mostly of {fabric}.'
      : 'Each block is a ring of {count} wedges pieced from strips, with corners of {fabric}.',
    values,
  );
}

function fabricSentences(project: Project): Phrase[] {
  const shares = fabricShares(drawProject(project));
  if (shares.length === 0) return [];
  const largest = shares.reduce((most, one) => (one.share > most.share ? one : most));
  const named = shares.length > NAMED ? shares.toSorted(byShare).slice(0, NAMED) : shares;
  const list = shares.filter((one) => named.includes(one)).map((one) => one.fabric.name);
  const more = shares.length - list.length;
  return [
    phrase(
      more > 0
        ? 'Fabrics from light to dark: {fabrics}, and {more} with smaller shares.'
        : 'Fabrics from light to dark: {fabrics}.',
      { fabrics: { list }, more },
    ),
    phrase('{fabric} has the largest share, {percent} % of the top.', {
      fabric: largest.fabric.name,
      percent: Math.round(largest.share * 100),
    }),
  ];
}

function byShare(one: FabricShare, other: FabricShare): number {
  return other.share - one.share;
}

function nameOf(project: Project, fabric: string): string {
  return findFabric(project, fabric)?.name ?? '';
}
