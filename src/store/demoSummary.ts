// Describes each example: its name, blocks and size. It fetches the examples when the list is first shown.
import { openProject } from '../editing/openProject';
import { layOut } from '../geometry/setting';
import { counted, type Phrase, phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Demo } from './firstQuilt';

export interface DemoSummary {
  readonly demo: Demo;
  readonly name: string;
  /** Its blocks and size in words; null where it could not be fetched or opened. */
  readonly words: Phrase | null;
  /** The example itself; null where words are. */
  readonly project: Project | null;
}

/** A summary of each example, in order. One that cannot be fetched or read has its file's name; opening it then says why. */
export function demoSummaries(demos: readonly Demo[]): Promise<DemoSummary[]> {
  return Promise.all(
    demos.map(async (demo): Promise<DemoSummary> => {
      const opened = await demo.text().then(openProject, () => null);
      if (!opened?.ok) return { demo, name: demo.name, words: null, project: null };
      return { demo, name: opened.value.name, words: holds(opened.value), project: opened.value };
    }),
  );
}

function holds(project: Project): Phrase {
  if (project.blocks.length === 0) {
    const strips = project.stripsOnHand.reduce((sum, row) => sum + row.count, 0);
    return phrase('{fabrics}, {strips}; nothing is sewn yet', {
      fabrics: counted(project.fabrics.length, '1 fabric', '{count} fabrics'),
      strips: counted(strips, '1 strip', '{count} strips'),
    });
  }
  const { width, height } = layOut(project);
  return phrase('{blocks}, {width} × {height}', {
    blocks: counted(project.blocks.length, '1 block', '{count} blocks'),
    width: { inches: width },
    height: { inches: height },
  });
}
