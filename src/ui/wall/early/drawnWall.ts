// The wall on the screen as markup, for the next visit.
import { drawProject } from '../../../drawing/drawProject';
import type { AppState } from '../../../store/app';
import type { DrawnWall } from '../../../store/storage/wallNote';
import { FIRST } from '../growing/parts';
import { flannel } from './flannel';

/** The large wall on the page as the next visit will draw it; null where another is on show, or one with photographs in it. */
export function drawnIn(page: Document, { project, look, lit, preview }: AppState): DrawnWall | null {
  const cloth = page.querySelector('.wall-area:not(.small) svg.top > .hung-cloth');
  if (!cloth || look.way !== 'colour' || look.photo || lit !== null || preview) return null;
  const { width, height, blocks } = drawProject(project);
  // The page draws it in parts: blocks would go and come again. Looked at first, because the markup of many takes a while.
  if (blocks.length > FIRST) return null;
  const shadow = [...page.querySelectorAll('.wall-area:not(.small) svg.top > .cloth-shadow')];
  const drawn = [...shadow, cloth].map(({ outerHTML }) => outerHTML).join('');
  const markup = patternsOf(drawn, page) + drawn;
  if (markup.includes('blob:')) return null;
  const { '--flannel': colour, '--on-flannel': ink } = flannel(project.preferences.wallLightness);
  const table = page.querySelector<HTMLElement>('.side-table')?.offsetHeight ?? 0;
  return { width, height, flannel: colour, ink, table, markup };
}

/** The patterns that a drawing fills its pieces with, and those that these turn. */
function patternsOf(drawn: string, page: Document): string {
  const named = new Set(Array.from(drawn.matchAll(/url\(#([^)]+)\)/g), ([, id = '']) => id));
  const patterns = new Set<Element>();
  for (const id of named) {
    const pattern = page.getElementById(id);
    const turned = page.getElementById(pattern?.getAttribute('href')?.slice(1) ?? '');
    for (const one of [turned, pattern]) if (one) patterns.add(one);
  }
  return [...patterns].map(({ outerHTML }) => outerHTML).join('');
}
