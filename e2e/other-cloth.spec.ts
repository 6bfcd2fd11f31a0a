import { expect, test } from '@playwright/test';
import { firstVisit, goTo, undoButton } from './room';

test('colourways stand side by side with their own figures and cloth; one becomes a quilt of its own @phone', async ({
  page,
}) => {
  await firstVisit(page);
  await goTo(page, 'Finishing');
  const part = page.getByRole('region', { name: 'Colourways' });
  await part.getByRole('button', { name: 'Make a colourway' }).click();
  await part.getByText('Same cloth', { exact: true }).click();
  await part.getByText('Turned over', { exact: true }).click();
  await part.getByRole('button', { name: 'Make a colourway' }).click();
  await expect(part.getByRole('img', { name: /^The quilt in/ })).toHaveCount(3);
  await expect(part.getByText(/meetings, .* in all; value/)).toHaveCount(3);
  await part.getByRole('button', { name: 'Colourway 2', exact: true }).click();
  await part.getByText('Cloth for it').click();
  await expect(part.getByText(/\d yd|fat quarter/).first()).toBeVisible();
  await part.getByRole('textbox', { name: 'Name of the colourway' }).fill('Evening');
  await part.getByRole('textbox', { name: 'Name of the colourway' }).press('Enter');
  await expect(undoButton(page)).toHaveAccessibleName('Undo: rename the colourway Evening');
  await part.getByRole('button', { name: 'Open as a quilt of its own' }).click();
  await expect(page.getByRole('button', { name: /^Quilt:.*Evening/ })).toBeVisible();
});

test('several orders to choose from: one is seen on the wall, then kept', async ({ page }) => {
  await firstVisit(page);
  await goTo(page, 'Wall');
  const part = page.getByRole('region', { name: 'Shuffle for balance' });
  await part.getByRole('button', { name: 'Show several to choose from' }).click();
  const order = part.getByRole('button', { name: /^Order 1: scores/ });
  await expect(order).toBeVisible({ timeout: 20_000 });
  await order.click();
  await expect(undoButton(page)).toBeDisabled();
  await part.getByRole('button', { name: 'Keep this order' }).click();
  await expect(undoButton(page)).toHaveAccessibleName('Undo: hang the blocks in another order');
});
