// What lies behind the findings: single clashes, each fabric, how even the top is, where it weighs, and what counts.
import { expect, type Locator, type Page, test } from './guarded';
import { firstVisit, goTo } from './room';

async function atTheWall(page: Page) {
  await firstVisit(page);
  await goTo(page, 'Wall');
  const findings = page.getByRole('region', { name: 'What clashes' });
  await expect(findings.getByRole('heading', { name: /things? to look at/ })).toBeVisible();
  return findings;
}

async function open(page: Page, fold: string) {
  await page.locator('summary', { hasText: fold }).click();
}

/** Marks of a centre of weight on the wall. */
const centres = (page: Page) =>
  page.getByRole('region', { name: 'Design wall' }).locator('[data-mark^=centre]');

/** A mend tells on demand each term it changes and every clash that goes or comes; what is marked is not covered by what is said. */
async function mendTells(page: Page, findings: Locator): Promise<void> {
  await findings.locator('.finding > button').first().click();
  await findings.locator('summary', { hasText: 'What it changes' }).first().click();
  const terms = findings.getByRole('table').first();
  await expect(terms.getByRole('row', { name: /^Fabric meeting itself/ })).toBeVisible();
  await expect(findings.getByRole('heading', { name: 'Mended' }).first()).toBeVisible();
  await findings.getByRole('checkbox').first().check();
  const notice = (await page.locator('.said.look').boundingBox())!;
  const rings = page.locator('svg.hand .stitch, svg.top .stitch');
  await expect(rings.first()).toBeAttached();
  for (const ring of await rings.all()) {
    const box = (await ring.boundingBox())!;
    const apart =
      box.x > notice.x + notice.width ||
      box.x + box.width < notice.x ||
      box.y > notice.y + notice.height ||
      box.y + box.height < notice.y;
    expect(apart).toBe(true);
  }
}

test('what lies behind the findings', async ({ page }) => {
  const findings = await atTheWall(page);
  await test.step('a mend tells on demand each term it changes and every clash that goes or comes', async () => {
    await mendTells(page, findings);
    await findings.getByRole('checkbox').first().uncheck();
    await findings.locator('.finding > button').first().click();
  });
  await test.step('each fabric is listed as it lies, the dominant one first, and its row lights it on the wall', async () => {
    await open(page, 'Each fabric');
    const rows = findings.locator('.each-fabric > li > button');
    await expect(rows.nth(10)).toBeAttached();
    await expect(rows.first()).toContainText('stands out most');
    await expect(centres(page)).toHaveCount(0);
    await rows.nth(1).press('Enter');
    await expect(rows.nth(1)).toHaveAttribute('aria-expanded', 'true');
    await expect(findings).toContainText(/Its centre lies .* the middle/);
    await expect(findings).toContainText(/to the next, middle to middle: .* in a random layout/);
    await expect(findings).toContainText(/neighbours both have it \d+ times; in a random layout \d/);
    await expect(centres(page)).toHaveCount(1);
    const dimmed = page.getByRole('region', { name: 'Design wall' }).locator('path[opacity="0.13"]');
    await expect(dimmed.nth(10)).toBeAttached();
    await rows.nth(1).press('Enter');
    await expect(centres(page)).toHaveCount(0);
    await expect(dimmed).toHaveCount(0);
  });
  await test.step('every finding says what was measured, with its unit', async () => {
    const said = findings.locator('.finding .measure');
    await expect(said.nth(2)).toBeVisible();
    const measures = await said.allTextContents();
    for (const words of measures) expect(words).toMatch(/\d.*(["″]|L\*|in 100|chance)/);
  });
  await test.step('what is summed up opens to single clashes, each marked on the wall and with ways to mend it', async () => {
    await findings.locator('summary', { hasText: 'Inside blocks the same fabric' }).click();
    const single = findings
      .getByRole('button', { name: /^Block \d+: .* between places \d and \d along/ })
      .first();
    const strong = page.locator('.mark.strong line');
    await expect(strong).toHaveCount(0);
    await single.press('Enter');
    await expect(single).toHaveAttribute('aria-expanded', 'true');
    await expect(strong.first()).toBeAttached();
    await expect(findings.getByRole('checkbox').first()).toBeVisible();
    await single.press('Enter');
    await expect(strong).toHaveCount(0);
    await findings.getByRole('button', { name: /^In \d+ places a fabric meets itself/ }).click();
    await findings.locator('summary', { hasText: /^Each of the \d+/ }).click();
    await expect(
      findings.getByRole('button', { name: /^Block \d+: places \d and \d both have/ }),
    ).toHaveCount(4);
  });
  await test.step('how even the top is stands in words, its figures behind them, and the centres of weight are marked when chosen', async () => {
    await open(page, 'How even the top is');
    await expect(findings.getByRole('region', { name: 'Block beside block' })).toContainText(
      /(Darker|Redder|Yellower) .*(random|ones)/,
    );
    const table = findings.getByRole('table');
    await expect(table).toBeHidden();
    await findings.getByText('The figures behind it').click();
    await expect(table.getByRole('row', { name: /^Value/ })).toHaveCount(2);
    const light = findings.getByRole('button', { name: /^Lights balance .*"/ });
    await light.click();
    await expect(light).toHaveAttribute('aria-pressed', 'true');
    await expect(centres(page)).toHaveAttribute('data-mark', 'centre-light');
    await findings.getByRole('button', { name: /^Warm colours balance/ }).click();
    await expect(centres(page)).toHaveAttribute('data-mark', 'centre-warmth');
  });
  await test.step('from how near cloths read as one is set beside the findings it changes', async () => {
    await open(page, 'What counts as a clash');
    const slider = findings.getByRole('slider', { name: /^Two fabrics read as one below/ });
    await slider.fill('0');
    await expect(findings).toContainText('Look-alikes meet in 0 places now');
    await slider.fill('30');
    await expect(findings).toContainText(/Look-alikes meet in [1-9]\d* places now/);
    const pool = findings.getByRole('button', { name: /light wedges together/ });
    await expect(pool).toHaveCount(1);
    await page
      .getByRole('region', { name: 'Shuffle for balance' })
      .getByLabel('Values')
      .selectOption({ label: 'Light to dark across' });
    await expect(pool).toHaveCount(0);
  });
});

test('on a phone a mend tells on demand each term it changes and every clash that goes or comes @phone @touch', async ({
  page,
}) => {
  await mendTells(page, await atTheWall(page));
});
