// What a quilt lacks for a whole top, or what comes next, in one line, and where it is done. cutting/plan/lacks.ts counts.
import { firstLack, type Lack } from '../../cutting/plan/lacks';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { Step } from '../../store/app';

export interface Missing {
  readonly words: Phrase;
  /** The step at which it is done, with the name of the button that goes there; null where there is nothing to do. */
  readonly at: { readonly step: Step; readonly name: string } | null;
}

/** What is missing, the first thing first. `things` are the findings on the wall; null while they are not known. */
export function missing(project: Project, step: Step, things: number | null): Missing {
  const lack = firstLack(project);
  if (lack) return { words: lackWords(lack), at: PLACES[stepOf(lack)] };
  if (things !== null && things > 0 && step !== 'finishing') {
    const words = counted(
      things,
      'Nothing is missing. One thing to look at on the wall.',
      'Nothing is missing. {count} things to look at on the wall.',
    );
    return { words, at: PLACES.wall };
  }
  const over = project.blocks.length - project.wall.cells.filter((cell) => cell !== null).length;
  if (over > 0) {
    const words = counted(
      over,
      'Nothing is missing. 1 block is left over on the side table.',
      'Nothing is missing. {count} blocks are left over on the side table.',
    );
    return { words, at: step === 'wall' ? PLACES.finishing : PLACES.wall };
  }
  return {
    words: phrase(
      step === 'finishing'
        ? 'Nothing is missing: save the pattern, then cut by it.'
        : 'Nothing is missing. What to save and print is under Finishing.',
    ),
    at: PLACES.finishing,
  };
}

const PLACES: Readonly<Record<Step, NonNullable<Missing['at']>>> = {
  fabrics: { step: 'fabrics', name: 'To the fabrics' },
  sets: { step: 'sets', name: 'To the strip sets' },
  wedges: { step: 'wedges', name: 'To the wedges' },
  blocks: { step: 'blocks', name: 'To the blocks' },
  wall: { step: 'wall', name: 'To the wall' },
  finishing: { step: 'finishing', name: 'To finishing' },
};

function stepOf({ kind }: Lack): Step {
  switch (kind) {
    case 'fabrics':
    case 'strips':
      return 'fabrics';
    case 'low sets':
    case 'sets':
      return 'sets';
    case 'blocks':
    case 'places':
      return 'blocks';
    case 'cells':
    case 'hung empty':
      return 'wall';
    default:
      return kind satisfies never;
  }
}

function lackWords(lack: Lack): Phrase {
  switch (lack.kind) {
    case 'fabrics':
      return phrase(
        lack.there === 0
          ? 'No fabrics yet: add those you want to sew with.'
          : 'One fabric would lie beside itself in every set: add a second, or better, a third.',
      );
    case 'low sets': {
      const values = { set: lack.sets[0] ?? '', short: { atLeast: lack.short } };
      return counted(
        lack.sets.length,
        'Set {set} gives no wedges: it is {short} too low. Add a strip to it.',
        '{count} sets give no wedges: they are up to {short} too low. Add a strip to each.',
        values,
      );
    }
    case 'sets':
      return phrase('{need}: make sets of the strips on hand.', { need: needWords(lack) });
    case 'strips':
      return lack.strips === null
        ? phrase('{need}: cut strips for more sets.', { need: needWords(lack) })
        : phrase('{need}: cut {strips} strips.', { need: needWords(lack), strips: lack.strips });
    case 'blocks':
      return counted(
        lack.blocks,
        'The wedges for 1 more block are there: add it.',
        'The wedges for {count} more blocks are there: add them.',
      );
    case 'places':
      return counted(
        lack.blocks,
        '1 block has empty places, and the wedges for it are there: fill it.',
        '{count} blocks have empty places, and the wedges for them are there: fill them.',
      );
    case 'cells':
      return counted(
        lack.cells,
        '1 place on the wall is empty: hang a block from the side table there.',
        '{count} places on the wall are empty: hang the blocks from the side table.',
      );
    case 'hung empty':
      return counted(
        lack.blocks,
        '1 block on the wall has empty places: hang a whole one from the side table instead.',
        '{count} blocks on the wall have empty places: hang whole ones from the side table instead.',
      );
    default:
      return lack satisfies never;
  }
}

function needWords({ blocks, wedges }: { readonly blocks: number; readonly wedges: number }): Phrase {
  return counted(
    blocks,
    wedges === 1 ? '1 more block needs {wedges} wedge' : '1 more block needs {wedges} wedges',
    '{count} more blocks need {wedges} wedges',
    { wedges },
  );
}
