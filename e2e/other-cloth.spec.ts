import { expect, test } from './guarded';
import { setsFromStrips } from './quilt';
import { firstVisit, goTo, openPart, undoButton } from './room';

test('colourways stand side by side with their own figures and cloth; one becomes a quilt of its own', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Finishing');
  await openPart(page, 'Colourways');
  const part = page.getByRole('main');
  const cards = page.getByRole('list', { name: 'Colourways side by side' });
  await part.getByRole('button', { name: 'Make a colourway' }).click();
  await part.getByText('Reuse these', { exact: true }).click();
  await part.getByText('Inverted', { exact: true }).click();
  await part.getByRole('button', { name: 'Make a colourway' }).click();
  // What is out of sight is drawn when it comes into sight.
  for (const card of await cards.getByRole('listitem').all()) await card.scrollIntoViewIfNeeded();
  await expect(cards.getByRole('img', { name: /^The quilt in/ })).toHaveCount(3);
  // The quilt as it is comes first; every card has its figures from beside the page.
  await expect(cards.getByRole('img').first()).toHaveAccessibleName('The quilt as it is');
  for (const [name, figure] of [
    ['Clashes', /^\d+, \d.*"$/],
    ['Value', /^\d+, mostly \d+ to \d+$/],
    ['Fabric', /^\d.* yd/],
  ] as const) {
    const term = cards.getByRole('term').filter({ hasText: new RegExp(`^${name}$`) });
    await expect(term).toHaveCount(4);
    for (const one of await term.all()) await expect(one.locator('+ dd')).toHaveText(figure);
  }
  await cards.getByRole('button', { name: 'Open Colourway 2' }).click();
  await expect(cards.getByRole('img')).toHaveCount(2);
  await part.getByText('Its fabrics', { exact: true }).click();
  await expect(part.getByText(/\d yd|fat quarter/).first()).toBeVisible();
  await part.getByRole('textbox', { name: 'Name of the colourway' }).fill('Evening');
  await part.getByRole('textbox', { name: 'Name of the colourway' }).press('Enter');
  await expect(undoButton(page)).toHaveAccessibleName('Undo: rename the colourway Evening');
  await part.getByRole('button', { name: 'Open as a quilt of its own' }).click();
  await expect(page.getByRole('button', { name: /^Quilt:.*Evening/ })).toBeVisible();
});

test('turned hues, lights and darks turned over: their cloth is the colourway’s, until the quilt is made in it', async ({
  page,
}) => {
  await setsFromStrips(page);
  const fabrics = page
    .getByRole('navigation', { name: 'Order of work' })
    .getByRole('button', { name: 'Fabrics' });
  await expect(fabrics).toContainText('14');
  await goTo(page, 'Finishing');
  await openPart(page, 'Colourways');
  const part = page.getByRole('main');
  const cards = page.getByRole('list', { name: 'Colourways side by side' });
  await part.getByText('Inverted', { exact: true }).click();
  await part.getByRole('button', { name: 'Make a colourway' }).click();
  await expect(cards.getByRole('img', { name: 'The quilt in Colourway 1' })).toBeVisible();
  await expect(fabrics).toContainText('14');
  await cards.getByRole('button', { name: 'Open Colourway 1' }).click();
  await part.getByRole('button', { name: 'Invert lights and darks' }).click();
  await expect(undoButton(page)).toHaveAccessibleName('Undo: change the colourway Colourway 1');
  await undoButton(page).click();
  await expect(undoButton(page)).toHaveAccessibleName('Undo: add the colourway Colourway 1');
  const picker = part.getByRole('button', { name: /In place of/ }).last();
  await expect(picker).toContainText('Colourway 1');
  await picker.click();
  await expect(page.getByRole('option', { name: /, Colourway 1$/ }).first()).toBeVisible();
  await page.keyboard.press('Escape');
  await part.getByRole('button', { name: 'Use this colourway' }).click();
  await expect(undoButton(page)).toHaveAccessibleName('Undo: use the colourway Colourway 1');
  await expect(fabrics).not.toContainText(/^Fabrics14$/);
  await undoButton(page).click();
  await expect(fabrics).toContainText('14');
});
