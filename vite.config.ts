import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { LICENCES, licences, notePackages } from './scripts/licences.ts';
import { offline } from './scripts/offline/plugin.ts';
import { security } from './scripts/security.ts';

export default defineConfig({
  base: './',
  plugins: [react(), security(), notePackages(), licences(), offline()],
  worker: { format: 'es', plugins: () => [notePackages()] },
  build: {
    target: 'es2022',
    sourcemap: false,
    license: { fileName: LICENCES },
    // jspdf would load these to draw web pages and SVG files; the pattern draws its own lines and never asks for them.
    rolldownOptions: { external: ['html2canvas', 'dompurify', 'canvg'] },
  },
  test: { include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'], environment: 'node', testTimeout: 180_000 },
});
