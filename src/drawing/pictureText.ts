// Writes the words that go with a picture of the top: its caption, and the text alternative for those who cannot see it.

import { findFabric } from '../model/find';
import { counted, type Phrase, phrase } from '../model/phrase';
import type { Project } from '../model/project';
import { rowWords } from '../model/words/rowWords';
import { drawProject } from './drawProject';
import { type FabricShare, fabricShares } from './shares';

/** The most fabrics that the text names, those with the largest shares; it only counts the others. */
const NAMED = 8;

/** The caption: name, finished size and number of blocks in one line. */
export function pictureCaption(project: Project): Phrase {
  const { width, height, blocks } = drawProject(project);
  return phrase('{name} · {width} × {height} · {blocks}', {
    name: project.name,
    width: { inches: width },
    height: { inches: height },
    blocks: counted(blocks.length, '1 block', '{count} blocks'),
  });
}

/** The text alternative, in a few sentences: size and setting, the blocks, the fabrics from light to dark. */
export function alternativeText(project: Project): Phrase[] {
  const drawing = drawProject(project);
  const blocks = drawing.blocks.length;
  const values = {
    name: project.name,
    blocks: counted(blocks, '1 block', '{count} blocks'),
    rows: rowWords(project.wall),
    width: { inches: drawing.width },
    height: { inches: drawing.height },
  };
  const say =
    project.setting.layout.kind === 'onPoint'
      ? '{name}: a quilt top with {blocks} set on point, {width} by {height} finished.'
      : '{name}: a quilt top with {blocks} in {rows}, {width} by {height} finished.';
  return [
    phrase(say, values),
    ...(blocks > 0 ? blockSentences(project) : []),
    ...settingSentences(project),
    ...borderSentences(project),
    ...fabricSentences(project),
  ];
}

function blockSentences(project: Project): Phrase[] {
  const { cornerFabric, cornerRule } = project.setting;
  const mixed = cornerRule !== null || project.blocks.some((block) => block.cornerFabric !== null);
  const values = { count: project.wedge.perBlock, fabric: nameOf(project, cornerFabric) };
  const ring = phrase(
    mixed
      ? 'Each block is a ring of {count} wedges pieced from strips, with corners mostly of {fabric}.'
      : 'Each block is a ring of {count} wedges pieced from strips, with corners of {fabric}.',
    values,
  );
  if (cornerRule === null) return [ring];
  const say =
    cornerRule.kind === 'edge'
      ? 'Along the edge of the top the corners are of {fabric}.'
      : 'In every other block the corners are of {fabric}.';
  return [ring, phrase(say, { fabric: nameOf(project, cornerRule.fabric) })];
}

function settingSentences(project: Project): Phrase[] {
  const { layout, plain, sashing } = project.setting;
  const said: Phrase[] = [];
  if (layout.kind === 'onPoint') {
    const fabrics = { sides: nameOf(project, layout.sides), corners: nameOf(project, layout.corners) };
    said.push(phrase('The side triangles are of {sides}, the corners of the top of {corners}.', fabrics));
  }
  if (plain)
    said.push(phrase('Every other square is plain, of {fabric}.', { fabric: nameOf(project, plain.fabric) }));
  if (sashing.where === 'none') return said;
  const values = { fabric: nameOf(project, sashing.fabric), width: { inches: sashing.width } };
  said.push(
    phrase(
      sashing.where === 'around'
        ? 'Sashing of {fabric}, {width} wide, runs between the blocks and around them.'
        : 'Sashing of {fabric}, {width} wide, runs between the blocks.',
      values,
    ),
  );
  if (sashing.cornerstones !== undefined) {
    const fabric = nameOf(project, sashing.cornerstones);
    said.push(phrase('Where it crosses lie squares of {fabric}.', { fabric }));
  }
  return said;
}

function borderSentences(project: Project): Phrase[] {
  const { borders, binding } = project.setting;
  const said = borders.map((border, index) => {
    const values = { fabric: nameOf(project, border.fabric), width: { inches: border.width } };
    if (border.keys !== undefined)
      return phrase(
        index === 0 ? 'A pieced border, {width} wide.' : 'Outside it a pieced border, {width} wide.',
        values,
      );
    return phrase(
      index === 0 ? 'A border of {fabric}, {width} wide.' : 'Outside it a border of {fabric}, {width} wide.',
      values,
    );
  });
  if (binding) said.push(phrase('The binding is of {fabric}.', { fabric: nameOf(project, binding.fabric) }));
  return said;
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
    phrase('{fabric} has the largest share, {percent}% of the top.', {
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
