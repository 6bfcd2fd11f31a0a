// Checks across the parts of a project, beyond the schema: every part named exists, counts agree, no block hangs twice.
// cutting/wedges/ledger.ts checks how many wedges a set yields and how many are used.
import { type FabricUse, fabricUses } from './fabricUses';
import { stepsPerTurn, turnsOf } from './find';
import { cornersOn } from './freedom';
import { isKeyTooNarrow, isTooNarrow, leastKeyWidth } from './lengths';
import { type Phrase, type PhraseValue, phrase } from './phrase';
import type { PicturedBlock, Project } from './project';
import type { Problem } from './result';
import { cellCount, isPlain } from './wallCells';
import { rowWords } from './words/rowWords';

/** All broken references and counts of a project that the schema has passed; empty when it is sound. */
export function checkReferences(project: Project): Problem[] {
  return [
    ...doubles(project),
    ...fabricReferences(project),
    ...stripWidths(project),
    ...blockParts(project),
    ...settingParts(project),
    ...wallCells(project),
  ];
}

function problem(code: string, path: string, say: string, values?: Record<string, PhraseValue>): Problem {
  const message: Phrase = phrase(say, values);
  return { code, path, message };
}

function doubles(project: Project): Problem[] {
  const ids = (rows: readonly { readonly id: string }[]) => rows.map((one) => one.id);
  const { stripsOnHand, clothOnHand, stripSets, blocks } = project;
  return [
    ...sharedCloth(project),
    ...repeats('stripsOnHand[#].id', ids(stripsOnHand), 'Two rows of strips on hand share the id {item}.'),
    ...repeats('clothOnHand[#].id', ids(clothOnHand), 'Two rows of fabric on hand share the id {item}.'),
    ...repeats('stripSets[#].id', ids(stripSets), 'Two strip sets share the id {item}.'),
    ...repeats(
      'stripSets[#].label',
      stripSets.map((one) => one.label),
      'Two strip sets are called {item}.',
    ),
    ...repeats('blocks[#].id', ids(blocks), 'Two blocks share the id {item}.'),
    ...repeats(
      'blocks[#].number',
      blocks.map((one) => one.number),
      'Two blocks have the number {item}.',
    ),
  ];
}

/** Problems where made-up cloth has the id of other cloth: ids must differ, because such cloth can join the quilt's fabrics. */
function sharedCloth({ fabrics, colourways }: Project): Problem[] {
  const places = [
    ...fabrics.map(({ id }, index) => ({ id, path: `fabrics[${index}].id` })),
    ...colourways.flatMap(({ cloth = [] }, at) =>
      cloth.map(({ id }, index) => ({ id, path: `colourways[${at}].cloth[${index}].id` })),
    ),
  ];
  const seen = new Set<string>();
  return places.flatMap(({ id, path }) => {
    const again = seen.has(id);
    seen.add(id);
    return again ? [problem('double', path, 'Two fabrics share the id {item}.', { item: id })] : [];
  });
}

/** A problem for each item that repeats an earlier one. In `path` # stands for its index, in `say` {item} for the item. */
function repeats(path: string, items: readonly (string | number)[], say: string, code = 'double'): Problem[] {
  const seen = new Set<string | number>();
  return items.flatMap((item, index) => {
    const again = seen.has(item);
    seen.add(item);
    return again ? [problem(code, path.replace('#', String(index)), say, { item })] : [];
  });
}

function fabricReferences(project: Project): Problem[] {
  const known = new Set(project.fabrics.map((fabric) => fabric.id));
  return fabricUses(project)
    .filter((use) => !known.has(use.fabric) && !isMadeUp(use))
    .map(({ path, fabric }) =>
      problem('no-such-fabric', path, 'There is no fabric with the id {fabric}.', { fabric }),
    );
}

/** Whether a use names made-up cloth of the colourway the use is in. */
function isMadeUp(use: FabricUse): boolean {
  return use.purpose === 'standIn' && (use.of.cloth?.some((fabric) => fabric.id === use.fabric) ?? false);
}

/** Why a strip of this cut width cannot be sewn with such a seam, inches; nothing where it can. */
export function tooNarrow(path: string, width: number, seam: number): Problem[] {
  if (!isTooNarrow(width, seam)) return [];
  const say = 'A strip cut {width} wide vanishes in its two seams; it must be wider than {least}.';
  return [problem('strip-too-narrow', path, say, { width: { inches: width }, least: { atLeast: 2 * seam } })];
}

function stripWidths(project: Project): Problem[] {
  const { seam, outerSeam } = project.wedge;
  const narrow = (path: string, width: number) => tooNarrow(path, width, seam);
  return [
    ...project.stripsOnHand.flatMap((strip, index) => narrow(`stripsOnHand[${index}].width`, strip.width)),
    ...project.stripSets.flatMap((set, at) =>
      set.strips.flatMap((strip, index) => narrow(`stripSets[${at}].strips[${index}].width`, strip.width)),
    ),
    ...project.setting.borders.flatMap((border, at) =>
      (border.keys ?? []).flatMap((key, index) =>
        keyWidth(`setting.borders[${at}].keys[${index}]`, key.width, outerSeam),
      ),
    ),
  ];
}

function keyWidth(path: string, width: number, seam: number): Problem[] {
  if (!isKeyTooNarrow(width, seam)) return [];
  const say =
    'A piece of a border cut {width} wide vanishes in its two seams; it must be at least {least} wide.';
  const values = { width: { inches: width }, least: { atLeast: leastKeyWidth(seam) } };
  return [problem('strip-too-narrow', `${path}.width`, say, values)];
}

function blockParts(project: Project): Problem[] {
  const { perBlock } = project.wedge;
  const sets = new Set(project.stripSets.map((set) => set.id));
  return project.blocks.flatMap((block, index) => {
    const problems: Problem[] = [];
    const values = { block: block.number, perBlock };
    if (block.kind === 'pictured') problems.push(...picturedParts(block, `blocks[${index}]`, perBlock));
    else if (block.places.length !== perBlock) {
      const say =
        'Block {block} has {places} places; with {perBlock} wedges to the block it needs {perBlock}.';
      problems.push(
        problem('places', `blocks[${index}].places`, say, { ...values, places: block.places.length }),
      );
    }
    if (block.cornerShift >= stepsPerTurn(perBlock)) {
      const say = 'Block {block}: the corner shift must be less than {steps}.';
      problems.push(
        problem('corner-shift', `blocks[${index}].cornerShift`, say, {
          ...values,
          steps: stepsPerTurn(perBlock),
        }),
      );
    }
    block.places.forEach((place, at) => {
      if (place === null || sets.has(place.set)) return;
      const say = 'Block {block}, place {place}: there is no strip set with the id {set}.';
      const path = `blocks[${index}].places[${at}].set`;
      problems.push(problem('no-such-set', path, say, { ...values, place: at + 1, set: place.set }));
    });
    return problems;
  });
}

/** Problems of a picture that shows another block than those of the quilt, or one that cannot have been photographed. */
function picturedParts(
  { number, wedges, progress }: PicturedBlock,
  path: string,
  perBlock: number,
): Problem[] {
  const problems: Problem[] = [];
  if (wedges.length !== perBlock) {
    const say =
      'Block {block} is a picture of {wedges} wedges; with {perBlock} wedges to the block it needs {perBlock}.';
    const values = { block: number, wedges: wedges.length, perBlock };
    problems.push(problem('wedges', `${path}.wedges`, say, values));
  }
  if (!cornersOn({ progress })) {
    const say = 'Block {block} is a picture of a sewn block; its corners are on.';
    problems.push(problem('picture-sewn', `${path}.progress`, say, { block: number }));
  }
  return problems;
}

/** Problems of settings that cannot be sewn. */
function settingParts({ setting, wedge }: Project): Problem[] {
  const { layout, sashing, borders } = setting;
  const problems: Problem[] = [];
  if (layout.kind === 'onPoint') {
    if (wedge.perBlock % 4 !== 0) {
      const say = 'Blocks of {perBlock} wedges are not square; only square blocks can be set on point.';
      problems.push(problem('on-point-not-square', 'setting.layout', say, { perBlock: wedge.perBlock }));
    }
    if (sashing.where === 'between') {
      const say = 'On point the sashing lies round every block, or nowhere.';
      problems.push(problem('on-point-sashing', 'setting.sashing.where', say));
    }
  }
  for (const which of ['columnGaps', 'rowGaps'] as const) {
    const after = (sashing[which] ?? []).map((gap) => gap.after);
    problems.push(
      ...repeats(`setting.sashing.${which}[#]`, after, 'Gap {item} has two widths.', 'gap-twice'),
    );
  }
  borders.forEach((border, index) => {
    if (border.keys === undefined || border.corners?.kind !== 'mitred') return;
    const say = 'Border {border} is pieced; its corners cannot be mitred.';
    problems.push(problem('pieced-mitred', `setting.borders[${index}].corners`, say, { border: index + 1 }));
  });
  return problems;
}

function wallCells(project: Project): Problem[] {
  const { rows, columns, cells } = project.wall;
  const needed = cellCount(rows, columns, project.setting.layout);
  if (cells.length !== needed) {
    const say =
      project.setting.layout.kind === 'onPoint'
        ? 'The wall lists {cells} cells; for {rows} on point it needs {needed}.'
        : 'The wall lists {cells} cells; for {rows} it needs {needed}.';
    return [
      problem('cells', 'wall.cells', say, { cells: cells.length, rows: rowWords({ rows, columns }), needed }),
    ];
  }
  const blocks = new Map(project.blocks.map((block) => [block.id, block.number]));
  const hung = new Map<string, number>();
  const turns = turnsOf(project.wedge.perBlock);
  return cells.flatMap((cell, index) => {
    if (cell === null) return [];
    const path = `wall.cells[${index}]`;
    const number = blocks.get(cell.block);
    if (number === undefined) {
      return [
        problem('no-such-block', `${path}.block`, 'There is no block with the id {block}.', {
          block: cell.block,
        }),
      ];
    }
    const problems: Problem[] = [];
    if (isPlain(index, project)) {
      const say = 'Block {block} hangs where a plain square lies.';
      problems.push(problem('on-plain-square', path, say, { block: number }));
    }
    const before = hung.get(cell.block);
    if (before !== undefined) {
      const say = 'Block {block} hangs twice, in cells {first} and {second}.';
      problems.push(
        problem('hangs-twice', `${path}.block`, say, { block: number, first: before + 1, second: index + 1 }),
      );
    }
    hung.set(cell.block, index);
    if (cell.turn >= turns) {
      problems.push(
        problem('turn', `${path}.turn`, 'Block {block}: the turn must be less than {turns}.', {
          block: number,
          turns,
        }),
      );
    }
    return problems;
  });
}
