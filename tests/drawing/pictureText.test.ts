import { expect, test } from 'vitest';
import { alternativeText, pictureCaption } from '../../src/drawing/pictureText';
import { chooseWedges, openBlocks } from '../../src/editing/commands/chooseWedges';
import { addBorder, changeSashing } from '../../src/editing/commands/setting';
import { createProject } from '../../src/model/create';
import { speak } from '../../src/model/phrase';
import { after, workshopProject } from '../editing/workshopProject';

const text = (project: Parameters<typeof alternativeText>[0], unit: 'in' | 'cm' = 'in') =>
  alternativeText(project)
    .map((one) => speak(one, unit))
    .join(' ');

test('the words give size, blocks, corners and the fabrics from light to dark', () => {
  const project = workshopProject();
  const filled = after(project, (now) => chooseWedges(now, openBlocks(now), 1).command);
  const said = text(filled);
  expect(said).toContain('Test quilt: a quilt top with 2 blocks in 3 rows of 2, 28" by 42" finished.');
  expect(said).toContain('a ring of 8 wedges pieced from strips, with corners of Background.');
  // L* by eye: Milk 93, Background 92, Amber 61, Harbour 30, Brick 29.
  expect(said).toMatch(
    /light to dark: (Milk, Background|Background, Milk), Amber, (Harbour and Brick|Brick and Harbour)\./,
  );
  expect(text(filled, 'cm')).toContain('71.1 cm by 106.7 cm');
});

test('one row is told as one', () => {
  const project = workshopProject();
  const wall = { rows: 1, columns: 2, cells: project.wall.cells.slice(0, 2) };
  expect(text({ ...project, wall })).toContain('with 2 blocks in 1 row of 2, ');
});

test('sashing and borders are told with their fabric and width', () => {
  const project = after(
    workshopProject(),
    () => changeSashing({ where: 'around', width: 1.5, fabric: 'f5' }),
    () => addBorder({ fabric: 'f2', width: 3 }),
  );
  const said = text(project);
  expect(said).toContain('Sashing of Milk, 1 1/2" wide, runs between the blocks and around them.');
  expect(said).toContain('A border of Brick, 3" wide.');
});

test('an empty project is told without a block and without dividing by nothing', () => {
  const project = createProject('e', 'Nothing yet');
  expect(text(project)).toBe('Nothing yet: a quilt top with 0 blocks in 3 rows of 2, 28" by 42" finished.');
  expect(speak(pictureCaption(project))).toBe('Nothing yet · 28" × 42" · 0 blocks');
});

test('on point, with plain squares and a corner rule, each is told with its fabric', () => {
  const project = workshopProject();
  const said = text({
    ...project,
    wall: { ...project.wall, rows: 2, columns: 2, cells: [...project.wall.cells.slice(0, 4), null] },
    setting: {
      ...project.setting,
      layout: { kind: 'onPoint', sides: 'f2', corners: 'f3' },
      plain: { fabric: 'f4', cells: 'second' },
      cornerRule: { kind: 'edge', fabric: 'f5' },
      binding: { fabric: 'f2', cutWidth: 2.25 },
    },
  });
  expect(said).toContain('2 blocks set on point');
  expect(said).toContain('The side triangles are of Brick, the corners of the top of Amber.');
  expect(said).toContain('Every other square is plain, of Harbour.');
  expect(said).toContain(
    'with corners mostly of Background. Along the edge of the top the corners are of Milk.',
  );
  expect(said).toContain('The binding is of Brick.');
});
