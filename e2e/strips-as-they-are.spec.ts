// Odd strips on hand: the largest top tries them as they are first, says which rule leaves a strip, and lays the very sets.

import { createProject } from '../src/model/create';
import { expect, type Page, test } from './guarded';
import { goTo, openFile, undoButton } from './room';
import { openSaved } from './stored';

/** Eight fabrics, each with two strips of 1 1/4 and one each of 1 3/8, 1 3/4 and 2.2; four fabrics 42 long and four 36. */
function oddStrips(id: string, cutHeight: number): string {
  const project = createProject(id, 'Odd strips');
  const colours = ['#8b1e3f', '#d8a15a', '#2f4858', '#86bbd8', '#f6e7cb', '#5b8e7d', '#ff6f59', '#f4d35e'];
  colours.forEach((colour, at) => {
    const id = `c${at}`;
    project.fabrics.push({ id, name: `Cloth ${'ABCDEFGH'[at]}`, colour, cloth: { kind: 'plain' }, background: false });
    for (const [width, count] of [[1.25, 2], [1.375, 1], [1.75, 1], [2.2, 1]] as const) {
      project.stripsOnHand.push({ id: `${id}-${width}`, fabric: id, width, length: at < 4 ? 42 : 36, count });
    }
  }); // biome-ignore format: a table
  project.wedge.cutHeight = cutHeight;
  return JSON.stringify(project);
}

const top = (page: Page) => page.getByRole('region', { name: 'The largest top' });

test('odd strips: the largest top of them as they are, and sets of all of them', async ({ page }) => {
  await openSaved(page, oddStrips('odd', 7.5));
  await test.step('how large a top: the strips as they are, what cutting adds, and the sets are laid in one undo', async () => {
    await goTo(page, 'Fabrics');
    await page.getByRole('button', { name: 'How large a top it makes' }).click();
    await expect(
      top(page).getByText('With your strips as they are: 6 sets, 60 wedges, 7 blocks, 28" × 42" with 1 block over.'),
    ).toBeVisible();
    await expect(top(page).getByText('No more blocks can be made from the strips as they are.')).toBeVisible();
    await expect(top(page).getByText(/^Cutting some of them narrower.*cutting all of them makes 3 blocks\.$/)).toBeVisible();
    await expect(top(page).getByRole('button', { name: /^Cut and add \d+ strips$/ })).toBeVisible();
    await top(page).getByRole('button', { name: 'Use this: lay 6 sets' }).click();
    await expect(undoButton(page)).toHaveAccessibleName('Undo: lay 6 strip sets');
    await goTo(page, 'Strip sets');
    await expect(page.getByRole('region', { name: 'The sets' }).getByRole('button', { name: /^Set \w+: .*planned$/ })).toHaveCount(6);
  });
  await test.step('making sets of all strips says why each strip is left', async () => {
    await openFile(page, oddStrips('odd-higher', 7.75));
    await expect(page.getByRole('dialog')).toBeHidden();
    await goTo(page, 'Strip sets');
    const making = page.getByRole('region', { name: 'Make sets at random' });
    await making.getByText('all the strips give', { exact: true }).click();
    await page.getByRole('button', { name: 'Make sets' }).click();
    await expect(making.getByText(/^5 sets made, \d+ strips left over\.$/)).toBeVisible();
    await expect(making.getByText(/^Left: .*: too few strips are left for one more set: sewn together/)).toBeVisible();
  });
}); // biome-ignore format: long sentences
