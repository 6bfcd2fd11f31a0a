// Paces news that comes faster than the page can draw it: draws the latest, then leaves the page free for a while before the
// next, so that a press of Stop is heard at once however large the wall is.

/** Milliseconds for which the page is left free after it has drawn. */
const FREE = 60;

export interface Pace<News> {
  readonly tell: (news: News) => void;
  /** Ends drawing: later news is ignored. */
  readonly end: () => void;
}

/**
 * Paces calls of `draw`. `join` makes one piece of news of two that are not drawn yet; `drawn` calls back when the page has
 * drawn.
 */
export function paced<News>(
  join: (earlier: News, later: News) => News,
  draw: (news: News) => void,
  drawn: (then: () => void) => void = nextFrame,
): Pace<News> {
  let waiting: { readonly news: News } | null = null;
  let busy = false;
  let ended = false;
  const free = () => {
    busy = false;
    if (!waiting || ended) return;
    const { news } = waiting;
    waiting = null;
    busy = true;
    draw(news);
    drawn(() => setTimeout(free, FREE));
  };
  return {
    tell: (news) => {
      waiting = { news: waiting ? join(waiting.news, news) : news };
      if (!busy) free();
    },
    end: () => {
      ended = true;
    },
  };
}

/** Calls back in the frame after the next one, when the page has drawn. */
function nextFrame(then: () => void): void {
  requestAnimationFrame(then);
}
