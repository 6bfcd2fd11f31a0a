// Runs before the first script: shows the wall that the page is going to open, at the place where its own wall will be. It is a picture
// in the shell that index.html brings along, which React replaces with the page itself in one frame.
import { isDismissed } from '../../../store/dismissed';
import { trying } from '../../../store/storage/trying';
import { type DrawnWall, earlyWall } from '../../../store/storage/wallNote';
import { flows } from '../../flows';
import { setTrustedTypes } from '../../trustedTypes';
import { idleWords } from '../hands/gestureWords';
import { fitted, marginOf, viewBox } from '../view';

/** Shows what is known; leaves the shell hidden where it is not sure, or where the page flows and the wall's place is not known. */
function show(shell: HTMLElement, svg: SVGSVGElement): void {
  const known = earlyWall({ local: () => localStorage, window: () => sessionStorage });
  if (known === null || flows()) return;
  const wall = known === 'example' ? exampleIn(svg) : known;
  // As Trusted Types let it through: figures of cloth alone.
  if (known !== 'example') svg.innerHTML = wall.markup;
  tellGestures(shell);
  const table = shell.querySelector<HTMLElement>('.side-table')!;
  table.hidden = wall.table === 0;
  table.style.height = `${wall.table}px`;
  shell.style.setProperty('--flannel', wall.flannel);
  shell.style.setProperty('--on-flannel', wall.ink);
  shell.hidden = false;
  const { width, height } = shell.querySelector('.wall')!.getBoundingClientRect();
  const window = { width, height };
  svg.setAttribute('viewBox', viewBox(fitted(wall, window, marginOf(window)), window));
}

function exampleIn(svg: SVGSVGElement): DrawnWall {
  const { width, height, flannel = '', ink = '' } = svg.dataset;
  return { width: Number(width), height: Number(height), flannel, ink, table: 0, markup: '' };
}

function tellGestures(shell: HTMLElement): void {
  const line = shell.querySelector<HTMLElement>('.gesture-line')!;
  line.hidden = isDismissed('wall', () => localStorage);
  line.querySelector('span')!.textContent = idleWords();
}

setTrustedTypes(window);
const shell = document.querySelector<HTMLElement>('.early');
const svg = shell?.querySelector<SVGSVGElement>('svg.top');
if (shell && svg) {
  trying(() => show(shell, svg));
  // Nothing of a wall that could not be shown to its end.
  shell.hidden = !svg.hasAttribute('viewBox');
}
