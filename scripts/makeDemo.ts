// Writes demo-data/*.json: run with `npx tsx scripts/makeDemo.ts` after changing a table, a seed or a rule they rest on.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openProject } from '../src/editing/openProject';
import { speak } from '../src/model/phrase';
import { writeProject } from '../src/model/reading/read';
import { demoProjects } from './demo/projects';

const folder = join(import.meta.dirname, '..', 'demo-data');
for (const { file, project } of demoProjects()) {
  const text = writeProject(project);
  const opened = openProject(text);
  if (!opened.ok) {
    for (const { path, message } of opened.problems) console.error(`${file}: ${path}: ${speak(message)}`);
    process.exit(1);
  }
  writeFileSync(join(folder, file), text);
  console.log(`${file}: ${project.blocks.length} blocks, ${project.stripSets.length} sets`);
}
