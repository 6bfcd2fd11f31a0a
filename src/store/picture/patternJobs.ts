// The messages of the worker that lays out the pattern and makes its file; workers/protocol.ts has the protocol.
import type { PatternOptions } from '../../drawing/pattern/options';
import type { Pattern } from '../../drawing/pattern/page';
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

export interface PatternJobs {
  /** The answer is null where it was stopped. */
  readonly layOut: { readonly ask: Asked; readonly progress: null; readonly answer: Result<Pattern> | null };
  readonly make: {
    readonly ask: Asked & {
      readonly pictures: readonly (readonly [PictureId, StoredPicture])[];
      /** The very pages, where they are laid out already; null where they are not. */
      readonly laidOut: Pattern | null;
    };
    readonly progress: PdfProgress;
    readonly answer: Result<MadePdf> | null;
  };
}
