// Forced colours (CSS Color Adjustment 1, section 3): what is chosen is seen as chosen though backgrounds are taken away.
import { expect, type Locator, test } from './guarded';
import { firstVisit, goTo, openPart } from './room';

/** How a control looks that may be told from another by it. */
function look(control: Locator): Promise<string> {
  return control.evaluate((element) => {
    const { backgroundColor, color, borderColor, outlineColor } = getComputedStyle(element);
    return JSON.stringify({ backgroundColor, color, borderColor, outlineColor });
  });
}

test('chosen segments, pressed switches and the current step look chosen in forced colours', async ({
  page,
}) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await firstVisit(page);
  await goTo(page, 'Fabrics');
  const steps = page.getByRole('navigation', { name: 'Order of work' });
  const current = steps.locator('[aria-current="step"]');
  await page.locator('h2').first().focus();
  const other = steps.getByRole('button', { name: 'Wall' });
  expect(await look(current)).not.toBe(await look(other));

  await goTo(page, 'Finishing');
  await openPart(page, 'Pattern');
  const chosen = page.locator('.panel .choice label:has(input:checked)').first();
  const not = page.locator('.panel .choice label:not(:has(input:checked))').first();
  expect(await look(chosen)).not.toBe(await look(not));
  const part = page.getByRole('navigation', { name: 'Parts of finishing' });
  expect(await look(part.locator('[aria-current]').first())).not.toBe(
    await look(part.getByRole('button', { name: 'Picture', exact: true })),
  );

  const looks = page.getByRole('toolbar', { name: 'How the wall is shown' });
  const grey = looks.getByRole('button', { name: /^Grey/ });
  await expect(grey).toHaveAttribute('aria-pressed', 'false');
  const before = await look(grey);
  await grey.click();
  await expect(grey).toHaveAttribute('aria-pressed', 'true');
  await page.locator('h2').first().focus();
  expect(await look(grey)).not.toBe(before);
});
