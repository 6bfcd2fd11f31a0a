// Names of the stages of a strip set's progress.
import type { StripSet } from '../../../model/project';

export const SET_PROGRESS_NAMES: Readonly<Record<StripSet['progress'], string>> = {
  planned: 'planned',
  sewn: 'sewn',
  cut: 'cut',
};

export const SET_PROGRESS_OPTIONS = (['planned', 'sewn', 'cut'] as const).map((value) => ({
  value,
  label: SET_PROGRESS_NAMES[value],
}));
