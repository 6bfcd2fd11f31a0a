// Browser tests of the built tool. Every spec runs at the desk; one tagged @tablet or @phone runs there too, and one
// tagged @touch only there.
import { defineConfig } from '@playwright/test';
import { findChromium } from './scripts/browser.mjs';

// Another port lets two checkouts test side by side.
const PORT = Number(process.env.TEST_PORT ?? 4183);
const chromium = findChromium();

const touch = (width: number, height: number) => ({ viewport: { width, height }, hasTouch: true });

export default defineConfig({
  testDir: 'e2e',
  outputDir: `test-results/browser-${PORT}`,
  fullyParallel: true,
  workers: 2,
  // Under CI a test has a second try; npm test names those that needed it (scripts/test.mjs).
  retries: process.env.CI ? 1 : 0,
  // Waiting costs nothing where a test passes, and others compute beside it.
  timeout: 120_000,
  expect: { timeout: 20_000 },
  forbidOnly: Boolean(process.env.CI),
  reporter: [['list'], ['json', { outputFile: 'test-results/browser.json' }]],
  use: {
    baseURL: `http://localhost:${PORT}`,
    trace: 'off',
    // Specs of motion ask for it; all others need not wait for what slides.
    contextOptions: { reducedMotion: 'reduce' },
    // Only the spec of work without a network keeps the build in the browser.
    serviceWorkers: 'block',
    launchOptions: {
      ...(chromium ? { executablePath: chromium } : {}),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  projects: [
    { name: 'desktop', use: { viewport: { width: 1440, height: 900 } }, grepInvert: /@touch\b/ },
    { name: 'tablet', use: touch(1024, 768), grep: /@tablet\b/ },
    { name: 'phone', use: { ...touch(390, 844), isMobile: true }, grep: /@phone\b/ },
  ],
  webServer: {
    command: `node e2e/serve.mjs ${PORT}`,
    url: `http://localhost:${PORT}`,
    reuseExistingServer: !process.env.CI,
  },
});
