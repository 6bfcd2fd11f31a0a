// The pictures of the open quilt in the page's memory, each with an address for the screen. All that the quilt had since it was opened stay,
// so that no undo is without its picture.
import { createStore } from 'zustand/vanilla';
import type { HrefOf } from '../drawing/photos';
import { NO_PICTURES, type PictureId, type Pictures, type StoredPicture } from '../model/picture/picture';

export interface PicturesAtHand {
  readonly pictures: Pictures;
  /** The address of a picture in this page; another function whenever an address comes or goes. */
  readonly hrefOf: HrefOf;
}

/** Makes and revokes addresses. */
export interface Addresses {
  readonly make: (picture: StoredPicture) => string;
  readonly revoke: (address: string) => void;
}

const OF_PAGE: Addresses = {
  make: ({ type, bytes }) => URL.createObjectURL(new Blob([bytes], { type })),
  revoke: (address) => URL.revokeObjectURL(address),
};

export function createPicturesAtHand(first: Pictures = NO_PICTURES, addresses: Addresses = OF_PAGE) {
  const made = new Map<PictureId, string>();
  const shown = (pictures: Pictures): PicturesAtHand => {
    for (const [id, picture] of pictures) if (!made.has(id)) made.set(id, addresses.make(picture));
    const now = new Map(made);
    return { pictures, hrefOf: (id) => now.get(id) ?? null };
  };
  const state = createStore<PicturesAtHand>()(() => shown(first));
  return {
    state,
    add: (more: Pictures) => {
      const { pictures } = state.getState();
      if ([...more.keys()].some((id) => !pictures.has(id)))
        state.setState(shown(new Map([...pictures, ...more])));
    },
    /** Keeps only these: for another quilt, once it is on show. */
    replace: (pictures: Pictures) => {
      for (const [id, address] of made) {
        if (pictures.has(id)) continue;
        addresses.revoke(address);
        made.delete(id);
      }
      state.setState(shown(pictures));
    },
  };
}
