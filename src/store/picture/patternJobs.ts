// The messages of the worker that lays out the pattern and makes its file; workers/protocol.ts has the protocol.
import type { PatternOptions } from '../../drawing/pattern/options';
import type { Page, Pattern } from '../../drawing/pattern/page';
import type { PageShapes } from '../../drawing/pattern/pageShapes';
import type { Phrase } from '../../model/phrase';
import type { PictureId, StoredPicture } from '../../model/picture/picture';
import type { Project } from '../../model/project';
import type { Result } from '../../model/result';
import type { LengthUnit } from '../../model/units';
import type { NumberStyle } from '../../model/words/numberStyle';

/** How lengths and figures are written in the pattern. */
export interface Writing {
  readonly unit: LengthUnit;
  /** Absent: the style of the tool's own language. */
  readonly numbers?: NumberStyle;
}

interface Asked {
  readonly project: Project;
  readonly options: PatternOptions;
  readonly writing: Writing;
}

export interface MadePdf {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** Letters of names that neither the pattern's typeface nor the device has; a question mark stands for them. */
  readonly missing: readonly string[];
  /** Letters of names that are pictures of the device's letters. */
  readonly pictured: readonly string[];
}

/** How far the file is: words, and a share of 0 to 1. */
export interface PdfProgress {
  readonly doing: Phrase;
  readonly share: number;
}

/** A pattern without what is on its pages, of which there can be thirty megabytes: the worker keeps them. */
export interface PatternOutline extends Omit<Pattern, 'pages'> {
  readonly pages: readonly Pick<Page, 'parts'>[];
}

export interface PatternJobs {
  /** The worker keeps the pages under a number of the page's own. The answer is null where it was stopped. */
  readonly layOut: {
    readonly ask: Asked & { readonly number: number };
    readonly progress: null;
    readonly answer: Result<PatternOutline> | null;
  };
  /** What is on a page, from 0, of the pages kept under a number; null where they are not kept. */
  readonly page: {
    readonly ask: { readonly number: number; readonly page: number };
    readonly progress: null;
    readonly answer: PageShapes | null;
  };
  readonly make: {
    readonly ask: Asked & {
      readonly pictures: readonly (readonly [PictureId, StoredPicture])[];
      /** Under what the worker may keep these very pages; null where it has none. */
      readonly laidOut: number | null;
    };
    readonly progress: PdfProgress;
    readonly answer: Result<MadePdf> | null;
  };
}
