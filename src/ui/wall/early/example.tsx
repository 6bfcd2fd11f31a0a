// The wall of the example that a newcomer sees, as the build writes it into the page.
import { renderToStaticMarkup } from 'react-dom/server';
import { grainsOf, patternsFor } from '../../../drawing/blockPaths';
import { drawProject } from '../../../drawing/drawProject';
import { NO_HREFS } from '../../../drawing/photos';
import { openDocument } from '../../../editing/openDocument';
import type { Project } from '../../../model/project';
import { flannel } from './flannel';
import { TopCloth } from './TopCloth';

/**
 * The element <svg> with the top of an example, the text of its file, as it is drawn near by; its data say what earlyWall.ts has to know.
 * Examples have no pictures. Throws where it cannot be opened.
 */
export function exampleSvg(text: string): string {
  const opened = openDocument(JSON.parse(text));
  if (!opened.ok) throw new Error('exampleSvg: the example cannot be opened');
  const project = opened.value;
  const drawing = drawProject(project);
  const cloth = renderToStaticMarkup(
    <TopCloth drawing={drawing} blocks={drawing.blocks} fabrics={project.fabrics} lit={null} near />,
  );
  const { '--flannel': colour, '--on-flannel': ink } = flannel(project.preferences.wallLightness);
  const data = `data-width="${drawing.width}" data-height="${drawing.height}" data-flannel="${colour}" data-ink="${ink}"`;
  return `<svg class="top" aria-hidden="true" ${data}>${patternsIn(cloth, project)}${cloth}</svg>`;
}

/** The patterns that a drawing fills its pieces with, and those that these turn. */
function patternsIn(drawn: string, { fabrics, wedge }: Project): string {
  const all = patternsFor(fabrics, grainsOf(wedge.perBlock), NO_HREFS);
  const filled = all.filter(({ id }) => drawn.includes(`url(#${id})`));
  return all
    .filter((one) =>
      filled.some((pattern) => pattern === one || pattern.markup.includes(`href="#${one.id}"`)),
    )
    .map(({ markup }) => markup)
    .join('');
}
