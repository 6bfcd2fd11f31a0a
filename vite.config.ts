import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { FILES, firstScriptBudget } from './scripts/firstScript.ts';
import { licences, notePackages } from './scripts/licences.ts';
import { offline } from './scripts/offline/plugin.ts';
import { security } from './scripts/security.ts';
import { LICENCES } from './src/ui/shell/help/licences.ts';

export default defineConfig({
  base: './',
  plugins: [react(), security(), notePackages(), licences(), firstScriptBudget(), offline()],
  worker: { format: 'es', plugins: () => [notePackages()] },
  build: {
    target: 'es2022',
    sourcemap: false,
    license: { fileName: LICENCES },
    // jspdf would load these to draw web pages and SVG files; the pattern draws its own lines and never asks for them.
    // What counts is what the page fetches first (scripts/firstScript.ts).
    chunkSizeWarningLimit: 1000,
    rolldownOptions: {
      external: ['html2canvas', 'dompurify', 'canvg'],
      output: { codeSplitting: { groups: FILES } },
    },
  },
  test: { include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'], environment: 'node', testTimeout: 180_000 },
});
