// What the page lets through its Trusted Types (W3C Trusted Types; the build puts the policy into the page): as markup only figures
// of cloth, as scripts only the page's own workers. Everything else that would become code is refused by the browser.

interface Policies {
  readonly defaultPolicy: unknown;
  createPolicy(
    name: string,
    rules: {
      readonly createHTML: (markup: string) => string;
      readonly createScriptURL: (address: string) => string;
    },
  ): unknown;
}

const TAG =
  /<\/?(?:pattern|g|path|rect|circle|ellipse|line|polyline|polygon)(?:\s+[a-z-]+="[^"<>]*")*\s*\/?>/gi;
const HANDLER = /\s(?:on[a-z]|(?:xlink:)?href="(?!#))/i;

/** A picture that was made in this page, which can run and fetch nothing. */
const PICTURE =
  /<image(?:\s+(?:x|y|width|height)="-?[\d.]+")+\s+preserveAspectRatio="none"\s+href="blob:[^"<>\s]*"\s*\/>/g;

/** Markup of figures of cloth as it is; throws a TypeError for anything else. */
export function figuresOnly(markup: string): string {
  const figures = markup.replace(PICTURE, '');
  if (figures.replace(TAG, '').trim() !== '' || HANDLER.test(figures))
    throw new TypeError('This is no figure of cloth.');
  return markup;
}

/** The address as it is where it lies on the page's own server; throws a TypeError otherwise. */
export function ownScriptsOnly(address: string, page: string): string {
  if (new URL(address, page).origin !== new URL(page).origin)
    throw new TypeError('This script is not the page’s own.');
  return address;
}

/** Sets the rules, once, in browsers that know them. Call it before anything is drawn. */
export function setTrustedTypes(view: Window): void {
  const policies = (view as { trustedTypes?: Policies }).trustedTypes;
  if (!policies || policies.defaultPolicy) return;
  policies.createPolicy('default', {
    createHTML: figuresOnly,
    createScriptURL: (address) => ownScriptsOnly(address, view.location.href),
  });
}
