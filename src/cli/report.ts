// Makes report.json: sizes, sets, blocks, clashes and values as plain JSON with stable keys (docs/report.md lists them).
// Lengths are inches, areas square inches, values L* 0–100; coordinates run from the upper left corner of the finished top.
import { type Analysis, analyse } from '../balance/analyse';
import type { Clash } from '../balance/clashes/clashes';
import { clashWords } from '../balance/clashes/clashFindings';
import { spreadWords } from '../balance/evenness/fabricWords';
import { leanWords } from '../balance/evenness/spreadFindings';
import { CLASH_KINDS } from '../balance/finding';
import { wishesOf } from '../balance/score/wishes';
import { meanColour } from '../cloth/likeness';
import { type ColouredArea, valueHistogram, valueQuantile, valueStatistics } from '../cloth/mixture';
import { printMix } from '../cloth/print/printMix';
import { value } from '../colour/spaces';
import { wedgeLedger } from '../cutting/wedges/ledger';
import { plannedWedges } from '../cutting/wedges/yield';
import type { Drawing } from '../drawing/drawing';
import { seamOnTop } from '../drawing/marksLayer';
import { sizeWithSeams } from '../geometry/allowance';
import { area } from '../geometry/point';
import { heightShort } from '../geometry/stripSet';
import { apothem, finishedBlock, rimLength, unfinishedBlock } from '../geometry/wedge';
import { cellIndexOf, turnsOf } from '../model/find';
import { speak } from '../model/phrase';
import type { Block, Fabric, FabricId, Project } from '../model/project';
import { cornerFabricOf, rowAndColumn } from '../model/wallCells';

/** Raised when a key changes its meaning or is removed, not when a key is added. */
const REPORT_VERSION = 1;

/**
 * A kind of clash, or the id of a finding that begins with one, as version 1 has it: 'surround' for what the code calls a
 * setting clash. Readers of the report count on the word.
 */
function published(word: string): string {
  return word.replace(/^setting(?=:|$)/, 'surround');
}

/** The report of a sound project, from its drawing and its analysis. Numbers are rounded to a millionth. */
export function sheetReport(project: Project, drawing: Drawing, analysis: Analysis): object {
  const top = { width: drawing.width, height: drawing.height };
  const report = {
    format: 'wedgewall-report',
    version: REPORT_VERSION,
    project: { id: project.id, name: project.name },
    top: {
      finished: top,
      unfinished: sizeWithSeams(top, project.wedge.outerSeam),
    },
    block: {
      perBlock: project.wedge.perBlock,
      finished: finishedBlock(project.wedge),
      unfinished: unfinishedBlock(project.wedge),
      apothem: apothem(project.wedge),
      rim: rimLength(project.wedge),
    },
    wedge: project.wedge,
    wall: { rows: project.wall.rows, columns: project.wall.columns, hung: drawing.blocks.length },
    sashing: project.setting.sashing.where === 'none' ? null : project.setting.sashing,
    borders: project.setting.borders,
    layout: project.setting.layout,
    plain: project.setting.plain,
    cornerRule: project.setting.cornerRule,
    binding: project.setting.binding,
    sets: setRows(project),
    blocks: project.blocks.map((block) => blockRow(project, analysis, block)),
    clashes: analysis.clashes.map((clash) => clashRow(project, drawing, clash)),
    clashTotals: clashTotals(analysis.clashes),
    findings: analysis.findings.map((finding) => ({
      id: published(finding.id),
      kind: published(finding.kind),
      weight: finding.weight,
      measure: finding.measure,
      words: speak(finding.words, project.preferences.unit),
      measured: speak(finding.measured, project.preferences.unit),
      clashes: finding.clashes,
    })),
    evenness: analysis.evenness.map(({ words, ...row }) => ({
      ...row,
      words: speak(words, project.preferences.unit),
    })),
    wholeTop: wholeTopFigures(project, analysis),
    dominant: analysis.dominant,
    ...clothFigures(project, drawing, analysis),
  };
  return rounded(report) as object;
}

/** The analysis for the report and the marks, by the project's own preferences, as on screen. */
export function sheetAnalysis(project: Project): Analysis {
  return analyse(project, wishesOf(project.preferences));
}

function setRows(project: Project): object[] {
  const { cutHeight } = project.wedge;
  return wedgeLedger(project).map(({ set, height, available, used, left }) => ({
    id: set.id,
    label: set.label,
    strips: set.strips,
    length: set.length,
    height,
    heightNeeded: cutHeight,
    tallEnough: heightShort(height, project.wedge) === 0,
    progress: set.progress,
    wedges: { planned: plannedWedges(set, project.wedge), available, used, left },
  }));
}

function blockRow(project: Project, analysis: Analysis, block: Block): object {
  const cell = cellIndexOf(project, block.id);
  const hung = project.wall.cells[cell];
  const labels = new Map(project.stripSets.map((set) => [set.id, set.label]));
  const at = analysis.model.blocks.indexOf(block.id);
  return {
    id: block.id,
    number: block.number,
    kind: block.kind,
    cell: hung ? cell + 1 : null,
    ...(hung ? rowAndColumn(cell, project) : { row: null, column: null }),
    turnDegrees: hung ? (hung.turn * 360) / turnsOf(project.wedge.perBlock) : null,
    pinned: hung?.pinned ?? false,
    progress: block.progress,
    cornerFabric: cornerFabricOf(project, block, cell),
    places: block.places.map((place, index) =>
      place === null ? null : { place: index + 1, set: labels.get(place.set), tip: place.tip },
    ),
    ...(block.kind === 'pictured' ? { picture: block.picture, wedges: block.wedges } : {}),
    value: analysis.model.area[at]! > 0 ? analysis.model.lightness[at]! : null,
  };
}

function clashRow(project: Project, drawing: Drawing, clash: Clash): object {
  return {
    id: clash.id,
    kind: published(clash.kind),
    inches: clash.inches,
    weight: clash.weight,
    likeness: clash.likeness,
    fabrics: clash.fabrics,
    blocks: clash.numbers,
    places: clash.places,
    cells: clash.cells.map((cell) => cell + 1),
    against: clash.settingPart === 'triangle' ? 'setting' : clash.settingPart,
    at: clash.marks.flatMap((mark) => {
      const ends = mark.kind === 'seam' ? seamOnTop(drawing, mark) : null;
      return ends ? [{ from: ends[0], to: ends[1] }] : [];
    }),
    words: speak(clashWords(project, clash), project.preferences.unit),
  };
}

function clashTotals(clashes: readonly Clash[]): object {
  const total = (some: readonly Clash[]) => ({
    count: some.length,
    inches: some.reduce((sum, clash) => sum + clash.inches, 0),
    weight: some.reduce((sum, clash) => sum + clash.weight, 0),
  });
  const kinds = CLASH_KINDS.map((kind) => [
    published(kind),
    total(clashes.filter((clash) => clash.kind === kind)),
  ]);
  return { ...total(clashes), byKind: Object.fromEntries(kinds) as object };
}

/** The centres of lightness and warmth, from the middle of the blocks that hang; null for an empty wall. */
function wholeTopFigures(project: Project, { wholeTop }: Analysis): object | null {
  if (!wholeTop.middle) return null;
  const lean = (of: 'light' | 'warmth') => ({
    ...wholeTop[of],
    words: speak(leanWords(of, wholeTop[of]), project.preferences.unit),
  });
  return { middle: wholeTop.middle, light: lean('light'), warmth: lean('warmth') };
}

/** The spread of a fabric over the wedges that hang; null where none of them contains it. */
function spreadRow(project: Project, analysis: Analysis, id: FabricId): object | null {
  const spread = analysis.fabrics.find((one) => one.fabric === id);
  const { middle } = analysis.wholeTop;
  if (!spread || !middle) return null;
  const { fabric: _, joins, clustering, ...figures } = spread;
  return {
    ...figures,
    joins: { both: joins.both, mixed: joins.mixed },
    gathering: clustering,
    words: spreadWords(spread, middle).map((one) => speak(one, project.preferences.unit)),
  };
}

/** The keys `fabrics`, with finished areas, and `value`, over the whole top and over its wedges alone. */
function clothFigures(project: Project, drawing: Drawing, analysis: Analysis): object {
  const areas = new Map<FabricId, number>();
  for (const piece of [...drawing.setting, ...drawing.blocks.flatMap((hung) => hung.pieces)]) {
    if (piece.fabric !== null) areas.set(piece.fabric, (areas.get(piece.fabric) ?? 0) + area(piece.outline));
  }
  const whole = [...areas.values()].reduce((sum, one) => sum + one, 0);
  const seen = (fabric: Fabric) => meanColour(printMix(fabric));
  const surface: ColouredArea[] = project.fabrics.map((fabric) => ({
    hex: seen(fabric),
    area: areas.get(fabric.id) ?? 0,
  }));
  const spread = valueStatistics(surface);
  return {
    fabrics: project.fabrics.map((fabric, index) => ({
      id: fabric.id,
      name: fabric.name,
      background: fabric.background,
      colours: printMix(fabric),
      meanColour: surface[index]!.hex,
      value: value(surface[index]!.hex),
      area: surface[index]!.area,
      share: whole === 0 ? 0 : surface[index]!.area / whole,
      spread: spreadRow(project, analysis, fabric.id),
    })),
    value: {
      top: spread && {
        ...spread,
        median: valueQuantile(surface, 0.5),
        tenths: valueHistogram(surface),
      },
      wedges: analysis.value,
    },
  };
}

function rounded(given: unknown): unknown {
  if (typeof given === 'number') return Math.round(given * 1e6) / 1e6;
  if (Array.isArray(given)) return given.map(rounded);
  if (typeof given !== 'object' || given === null) return given;
  return Object.fromEntries(Object.entries(given).map(([key, one]) => [key, rounded(one)]));
}
