// The guard of every spec fails at what it is there for: each of these tests must fail, or it fails.
import { type Page, test } from './guarded';

const faults: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  'an error in the console': (page) => page.evaluate(() => console.error('all is not well')),
  'an error nobody caught': (page) =>
    page.evaluate(() => {
      setTimeout(() => {
        throw new Error('nobody catches this');
      }, 0);
    }),
  'a style the policy refuses': (page) =>
    page.evaluate(() => {
      const style = document.createElement('style');
      style.textContent = 'p { color: red }';
      document.head.append(style);
    }),
  'a word to another server': (page) =>
    page.evaluate(() => fetch('https://elsewhere.invalid/').catch(() => undefined)),
};

for (const [name, fault] of Object.entries(faults))
  test(`${name} fails a test`, async ({ page }) => {
    test.fail();
    // The page's own scripts are of no use here; its policy is.
    await page.route('**/*.js', (route) => route.fulfill({ contentType: 'text/javascript', body: '' }));
    await page.goto('/');
    await fault(page);
    // What was thrown comes after the answer.
    await page.evaluate(() => new Promise((done) => setTimeout(done, 50)));
  });
