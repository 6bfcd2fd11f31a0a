// Wrong files: each is opened as the tool opens a chosen file. It is refused in a sentence, or it is a quilt like any other: it can be
// written and read again, and all that is drawn and counted of it is a number.
import { isDeepStrictEqual } from 'node:util';
import { sheetAnalysis, sheetReport } from '../src/cli/report';
import { drawProject } from '../src/drawing/drawProject';
import { dataHrefs } from '../src/drawing/photos';
import { drawingToSvg } from '../src/drawing/svg';
import { openFile } from '../src/editing/openFile';
import { openProject } from '../src/editing/openProject';
import type { Pictures } from '../src/model/picture/picture';
import type { Project } from '../src/model/project';
import { writeProject } from '../src/model/reading/read';
import { dice } from '../tests/balance/tops';
import { mutate, mutatedBytes } from './mutate';
import { anyQuilt, fileOf, sentencesOf } from './quilts';
import { notFinite, type Try, type Trying } from './tally';

/** Opens one file that was made wrong. */
export const wrongFile: Try = async (number, trying) => {
  const chance = dice(number);
  const text = fileOf(anyQuilt(chance));
  const bytes = chance.below(3) === 0 ? mutatedBytes(text, chance) : structurallyWrong(text, chance);
  const opened = await openFile({ size: bytes.length, arrayBuffer: async () => bytes });
  if (!opened.ok) {
    trying.refused(sentencesOf(opened.problems));
    return;
  }
  lookThrough(opened.value, opened.pictures, trying);
};

function structurallyWrong(text: string, chance: ReturnType<typeof dice>): Uint8Array {
  const document = JSON.parse(text) as Record<string, unknown>;
  mutate(document, chance);
  return Buffer.from(JSON.stringify(document));
}

/** Draws and counts a quilt that was opened or changed, and reads its file again. */
export function lookThrough(project: Project, pictures: Pictures, trying: Trying): void {
  const file = writeProject(project, pictures);
  const again = openProject(file);
  if (!again.ok) trying.fault(`its own file is refused: ${sentencesOf(again.problems)[0]}`);
  else if (!isDeepStrictEqual(JSON.parse(writeProject(again.value, again.pictures)), JSON.parse(file)))
    trying.fault('its own file is another quilt');
  const drawing = drawProject(project);
  const analysis = sheetAnalysis(project);
  for (const [name, value] of [
    ['drawing', drawing],
    ['analysis', analysis.findings],
    ['report', sheetReport(project, drawing, analysis)],
  ] as const) {
    const fault = notFinite(value);
    if (fault) trying.fault(`no number in the ${name}: ${fault}`);
  }
  const svg = drawingToSvg(drawing, { title: project.name, hrefOf: dataHrefs(pictures) });
  const [odd] =
    /(?:NaN|Infinity|undefined)/.exec(
      svg.replaceAll(/>[^<]*</g, '><').replaceAll(/data-[a-z]+="[^"]*"/g, ''),
    ) ?? [];
  if (odd && !project.name.includes(odd) && !project.fabrics.some(({ name }) => name.includes(odd)))
    trying.fault(`${odd} in the picture`);
}
