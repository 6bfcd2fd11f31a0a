// Part of the build: puts the content-security policy into the page itself, so that it holds wherever the folder is served from.
// Nothing is loaded but the page's own files and pictures made in it; no script runs that is not a file of the build.
import type { Plugin } from 'vite';

/** The rules (W3C Content Security Policy Level 3, Trusted Types). */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  // The hash is that of the one style which the component library puts into the page (touch-action of what can be pressed).
  "style-src 'self' 'sha256-38RhXrc7EdReTKsOm23ZPOCUgniTUUcjky8QOOrQx6o='",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types default',
].join('; ');

/** The plugin; while the tool is being developed there is no policy, because the development server adds scripts of its own. */
export function security(): Plugin {
  return {
    name: 'wedgewall-security',
    apply: 'build',
    transformIndexHtml: (html) =>
      html.replace(
        '<meta charset="utf-8" />',
        `<meta charset="utf-8" />\n    <meta http-equiv="Content-Security-Policy" content="${POLICY}" />`,
      ),
  };
}
