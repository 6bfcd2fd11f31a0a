import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { earlyWall } from './scripts/earlyWall.ts';
import { FILES, firstScriptBudget } from './scripts/firstScript.ts';
import { licences, licencesServed, notePackages } from './scripts/licences.ts';
import { offline } from './scripts/offline/plugin.ts';
import { security } from './scripts/security.ts';
import { LICENCES } from './src/ui/shell/help/licences.ts';

/** jspdf would load these to draw web pages and SVG files; the pattern draws its own lines and never asks for them. */
const NEVER_ASKED_FOR = ['html2canvas', 'dompurify', 'canvg'];

export default defineConfig({
  base: './',
  plugins: [
    react(),
    security(),
    notePackages(),
    licences(),
    licencesServed(),
    earlyWall(),
    firstScriptBudget(),
    offline(),
  ],
  worker: { format: 'es', plugins: () => [notePackages()], rolldownOptions: { external: NEVER_ASKED_FOR } },
  build: {
    target: 'es2022',
    sourcemap: false,
    // A style sheet that comes later has the browser work out the styles of the whole wall again: 150 ms at 400 blocks, for each.
    cssCodeSplit: false,
    license: { fileName: LICENCES },
    // What counts is what the page fetches first (scripts/firstScript.ts).
    chunkSizeWarningLimit: 1000,
    rolldownOptions: {
      external: NEVER_ASKED_FOR,
      output: { codeSplitting: { groups: FILES } },
    },
  },
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    environment: 'node',
    isolate: false,
    // Much is made and thrown away: more room for what is new is a tenth less work, and threads that help to
    // clear it away would take the core that other steps of `npm test` run on.
    execArgv: ['--max-semi-space-size=64', '--single-threaded-gc'],
    setupFiles: ['tests/usualRuns.ts'],
    testTimeout: 180_000,
  },
});
