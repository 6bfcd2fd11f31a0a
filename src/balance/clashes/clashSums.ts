// Adds up all clashes of a top in inches: the sums behind the terms clashLength and lookAlikes.
import type { WallModel } from '../wall/wallModel';
import { addCounted, type ClashSums } from './clashRule';
import { type Contact, visitContacts } from './contacts';

/** Inches of clash of all that hangs. */
export function clashSums(model: WallModel): ClashSums {
  const sums: ClashSums = { same: 0, alike: 0 };
  visitContacts(model, (contact) => addContact(sums, contact));
  return sums;
}

/** Adds what a contact counts. */
export function addContact(sums: ClashSums, contact: Contact): void {
  if (contact.kind === 'seam') {
    sums.same += contact.clash.same;
    sums.alike += contact.clash.alike;
    return;
  }
  const { fabric, other, inches, likeness, factor } = contact;
  addCounted(sums, fabric, other, inches * likeness * factor);
}
