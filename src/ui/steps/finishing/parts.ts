// The parts of finishing in their order down the panel. Each heading carries its id; the list at the top goes there.

export const PARTS = [
  { id: 'sizes-title', title: 'Sizes' },
  { id: 'picture-title', title: 'Picture' },
  { id: 'words-title', title: 'In words' },
  { id: 'pattern-title', title: 'Pattern' },
  { id: 'cutting-title', title: 'Cloth and cutting list' },
  { id: 'kits-title', title: 'Kits and cost' },
  { id: 'weight-title', title: 'Weight and bulk' },
  { id: 'colourways-title', title: 'Colourways' },
] as const;

export type PartId = (typeof PARTS)[number]['id'];

/** Id of the first entry of the list, to which the way back from a part leads. */
export const FIRST_ENTRY = 'finishing-parts';

/** Scrolls to an element and moves the focus there. */
export function goToPlace(id: string): void {
  const place = document.getElementById(id);
  place?.scrollIntoView({ block: 'start' });
  place?.focus({ preventScroll: true });
}
