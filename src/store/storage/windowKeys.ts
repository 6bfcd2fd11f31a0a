// Where a window (sessionStorage) notes the quilt it has open, and the place in it: read before the first script too, which must stay small.

/** The quilt of the window: firstQuilt.ts. */
export const WINDOW_KEY = 'wedgewall-window';
/** The place in it: keepPlace.ts. */
export const PLACE_KEY = 'wedgewall-place';
