// Addresses of pictures on the page, and keys of photographs, which never repeat on it.
import type { StoredPicture } from '../../model/picture/picture';

/** Makes and revokes addresses; tests pass their own. */
export interface Addresses {
  readonly make: (picture: StoredPicture) => string;
  readonly revoke: (address: string) => void;
}

export const OF_PAGE: Addresses = {
  make: ({ type, bytes }) => URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type })),
  revoke: (address) => URL.revokeObjectURL(address),
};
