// What the browser's own Print gives: the list that is open in the panel, else the quilt with its name, sizes and map; never the tool.
// A part that prints itself (steps/finishing/cloth/printPart.ts) has said so before.
import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { drawProject } from '../../drawing/drawProject';
import { wallRows } from '../../drawing/wallRows';
import { finishedBlock, wedgeProblem } from '../../geometry/wedge';
import { counted, phrase } from '../../model/phrase';
import { useApp } from '../app';
import { Fractions } from '../fields/Fractions';
import { layBare } from '../steps/finishing/cloth/printPart';
import { SmallTop } from '../wall/SmallTop';
import { useSay } from '../words';

export function PrintSheet() {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const page = document.documentElement;
    let restore = () => {};
    const begin = () => {
      if (page.hasAttribute('data-print')) return;
      const list = document.querySelector<HTMLElement>('.panel .cloth-part');
      if (list) {
        restore = layBare(list);
        return;
      }
      // The browser takes the page as it is when this returns.
      flushSync(() => setPrinting(true));
      page.setAttribute('data-print', 'quilt');
      restore = () => {
        page.removeAttribute('data-print');
        setPrinting(false);
      };
    };
    const end = () => {
      restore();
      restore = () => {};
    };
    globalThis.addEventListener('beforeprint', begin);
    globalThis.addEventListener('afterprint', end);
    return () => {
      globalThis.removeEventListener('beforeprint', begin);
      globalThis.removeEventListener('afterprint', end);
    };
  }, []);
  return printing ? <Sheet /> : null;
}

function Sheet() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const problem = wedgeProblem(project.wedge);
  return (
    <article className="print-sheet">
      <h2>{project.name || say('Untitled quilt')}</h2>
      {problem ? <p>{say(problem)}</p> : <Quilt />}
    </article>
  );
}

function Quilt() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const drawing = drawProject(project);
  const block = finishedBlock(project.wedge);
  const rows = wallRows(project, drawing, say);
  const slanted = project.setting.layout.kind === 'onPoint';
  const sizes = phrase('{width} × {height} finished; {blocks}, {wide} × {high} finished', {
    width: { inches: drawing.width },
    height: { inches: drawing.height },
    blocks: counted(drawing.blocks.length, '1 block', '{count} blocks'),
    wide: { inches: block.width },
    high: { inches: block.height },
  });
  return (
    <>
      <p>
        <Fractions text={say(sizes)} />
      </p>
      <SmallTop project={project} label={say('The quilt')} near />
      <table>
        <caption>
          {say(
            slanted
              ? 'Map of the wall: blocks by diagonal row, each from the upper left; row 1 is in the upper right corner'
              : 'Map of the wall: blocks by row, each from the left',
          )}
        </caption>
        <tbody>
          {rows.map((row, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows and places are told apart by their order only
            <tr key={index}>
              <th scope="row">{say('Row {row}', { row: index + 1 })}</th>
              {row.map((words, place) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: as above
                <td key={place}>{words}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
