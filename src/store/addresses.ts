// Addresses of pictures in the page's memory.
import type { StoredPicture } from '../model/picture/picture';

/** Makes and revokes addresses; tests pass their own. */
export interface Addresses {
  readonly make: (picture: StoredPicture) => string;
  readonly revoke: (address: string) => void;
}

export const OF_PAGE: Addresses = {
  make: ({ type, bytes }) => URL.createObjectURL(new Blob([bytes], { type })),
  revoke: (address) => URL.revokeObjectURL(address),
};
