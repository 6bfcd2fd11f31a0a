// The block card in words: the wedge of each place and the order of joining, to copy or to print.
import { Copy, Printer } from 'lucide-react';
import { useRef, useState } from 'react';
import { seamLies } from '../../../../cutting/wedges/nesting';
import { cornerPlaceWords } from '../../../../drawing/cornerPlaceWords';
import { type Phrase, phrase } from '../../../../model/phrase';
import type { Block, Project } from '../../../../model/project';
import { useApp } from '../../../app';
import { Fractions } from '../../../fields/Fractions';
import { useSay, useWrite } from '../../../words';
import { BlockFigure } from '../BlockFigure';
import { shownWords, wedgeWords } from '../blockWords';
import { bandNames } from './PlacePanel';

export function BlockSheet({ block, turn }: { block: Block; turn: number }) {
  const say = useSay();
  const write = useWrite();
  const project = useApp((app) => app.project);
  const sheet = useRef<HTMLDivElement>(null);
  const [told, setTold] = useState<Phrase | null>(null);
  const lines = sheetLines(project, block);
  const title = say('Block {block}', { block: block.number });
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(
        [title, write('Places are numbered clockwise.'), ...lines.map((line) => write(line))].join('\n'),
      );
      setTold(phrase('Copied.'));
    } catch {
      setTold(phrase('The browser did not allow copying. Select the lines and copy them.'));
    }
  };
  const print = () => {
    const page = document.documentElement;
    page.setAttribute('data-print', 'block-sheet');
    globalThis.addEventListener('afterprint', () => page.removeAttribute('data-print'), { once: true });
    globalThis.print();
  };
  return (
    <details className="leaf">
      <summary>{say('Block card')}</summary>
      <div className="block-sheet" ref={sheet}>
        <h3>
          {title} <bdi className="quiet">{project.name}</bdi>
        </h3>
        <BlockFigure block={block} turn={turn} />
        <p>
          {say('Places are numbered clockwise from place 1, the dark disc, which need not be at the top.')}
        </p>
        <ol>
          {lines.map((line, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: lines in a fixed order
            <li key={index}>
              <Fractions text={say(line)} />
            </li>
          ))}
        </ol>
      </div>
      <div className="row">
        {navigator.clipboard ? (
          <button type="button" className="button" onClick={() => void copy()}>
            <Copy size={16} aria-hidden /> {say('Copy')}
          </button>
        ) : null}
        <button type="button" className="button" onClick={print}>
          <Printer size={16} aria-hidden /> {say('Print')}
        </button>
        <span role="status">{told ? say(told) : null}</span>
      </div>
    </details>
  );
}

/** The lines of the card: each place, the corners, and the order of joining (common practice, no source). */
function sheetLines(project: Project, block: Block): Phrase[] {
  if (block.kind === 'pictured')
    return block.wedges.map((wedge, place) =>
      phrase('Place {place}: {wedge}.', { place: place + 1, wedge: shownWords(project, wedge) }),
    );
  const lies = seamLies(project, block);
  const places = block.places.map((wedge, place) => {
    const values = { place: place + 1, wedge: wedgeWords(project, wedge) };
    if (wedge === null) return phrase('Place {place}: {wedge}.', values);
    return phrase(
      lies[place] === 'rim'
        ? 'Place {place}: {wedge}; seams towards the rim. {fabrics}.'
        : 'Place {place}: {wedge}; seams towards the middle. {fabrics}.',
      { ...values, fabrics: bandNames(project, wedge) },
    );
  });
  return [
    ...places,
    joinWords(block.places.length, project.wedge.assemblySeam),
    phrase(
      project.wedge.perBlock === 8
        ? 'Corner triangles on places {places}.'
        : 'The four setting pieces go on at places {places}.',
      { places: cornerPlaceWords(block, project.wedge) },
    ),
  ];
}

/** The order of joining: pairs, halves, block; without pairs where a half has an odd number of wedges. */
function joinWords(count: number, seam: number): Phrase {
  const half = count / 2;
  if (half % 2 === 1) {
    return phrase('Join the wedges of each half with a {seam} seam: {halves}. Then join the halves.', {
      seam: { seam },
      halves: { list: [`1 to ${half}`, `${half + 1} to ${count}`] },
    });
  }
  const pairs = Array.from({ length: half }, (_, pair) => `${2 * pair + 1} + ${2 * pair + 2}`);
  return phrase('Join pairs with a {seam} seam: {pairs}. Then the pairs into halves, then the halves.', {
    seam: { seam },
    pairs: { list: pairs },
  });
}
