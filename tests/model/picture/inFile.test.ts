// Pictures in a project file: what is written comes back, and whatever a file says, the quilt opens with sound pictures or sentences.
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { openProject } from '../../../src/editing/openProject';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import { plainImage } from '../../../src/model/picture/image';
import { dataUrlOf } from '../../../src/model/picture/inFile';
import { type Pictures, picturesUsed } from '../../../src/model/picture/picture';
import type { Project } from '../../../src/model/project';
import { writeProject } from '../../../src/model/reading/read';
import { runs } from '../../runs';
import { imageFile, KINDS, keptPicture, photographed } from './images';

const idOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const urlOf = (type: string, bytes: Uint8Array) =>
  `data:${type};base64,${Buffer.from(bytes).toString('base64')}`;

function quiltOf(ids: Iterable<string>): Project {
  const project = createProject('p', 'Rust and rain');
  const fabrics = Array.from(ids, (id, at) => ({
    ...photographed(id),
    id: `photo-${at}`,
    name: `Cloth ${at}`,
  }));
  return { ...project, fabrics: [...project.fabrics, ...fabrics] };
}

const textWith = (project: Project, pictures: unknown) => JSON.stringify({ ...project, pictures });

/** A file that opens: its project, pictures and sentences. */
function opened(text: string) {
  const read = openProject(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { ...read, remarks: read.remarks.map((one) => speak(one)) };
}

const LACKING = 'What lacks its picture is drawn in its mean colour.';
let three: Pictures;
beforeAll(async () => {
  three = new Map(
    await Promise.all(KINDS.map((kind, at) => keptPicture({ kind, width: 8 + at, height: 12 }))),
  );
});

describe('pictures in a project file', () => {
  it('come back as they were written, those that are used, and none else', () => {
    fc.assert(
      fc.property(fc.subarray([...three.keys()]), (used) => {
        const project = quiltOf(used);
        const text = writeProject(project, three);
        const read = opened(text);
        expect(read.value).toEqual(project);
        expect(read.remarks).toEqual([]);
        expect(read.pictures).toEqual(new Map([...three].filter(([id]) => used.includes(id))));
        expect(writeProject(read.value, read.pictures)).toBe(text);
      }),
      { seed: 12, numRuns: 30 },
    );
  });

  it('leave a file without pictures as it ever was', () => {
    expect(writeProject(createProject('p', 'Plain'), three)).not.toContain('pictures');
  });

  it('are told where they are missing, and the fabric keeps all it knows', () => {
    const project = quiltOf(three.keys());
    const read = opened(writeProject(project));
    expect(read.value).toEqual(project);
    expect(read.pictures.size).toBe(0);
    expect(read.remarks).toContain('The picture of Cloth 1 was left out: it is not in the file.');
    expect(read.remarks.at(-1)).toBe(LACKING);
  });

  it('are dropped and told where nothing uses them', () => {
    const entry = Object.fromEntries([...three].map(([id, picture]) => [id, dataUrlOf(picture)]));
    const read = opened(textWith(quiltOf([...three.keys()].slice(0, 1)), entry));
    expect(read.pictures.size).toBe(1);
    expect(read.remarks).toEqual(['2 pictures in the file that nothing uses were left out.']);
  });

  it('lose what the camera wrote, under the id of what is left', async () => {
    for (const kind of KINDS) {
      const file = await imageFile({ kind, camera: true });
      const project = quiltOf([idOf(file)]);
      const read = opened(textWith(project, { [idOf(file)]: urlOf(`image/${kind}`, file) }));
      const plain = plainImage(file)!.bytes;
      expect(read.remarks).toEqual([]);
      expect([...read.pictures.keys()]).toEqual([idOf(plain)]);
      expect([...picturesUsed(read.value)]).toEqual([idOf(plain)]);
      expect(read.pictures.get(idOf(plain))!.bytes).toEqual(plain);
    }
  });

  it.each([
    ['a script in an SVG', 'image/svg+xml', '<svg onload="alert(1)"/>', 'it is no JPEG, PNG or WebP picture'],
    ['a text', 'image/png', 'hello', 'it is no JPEG, PNG or WebP picture'],
  ])('are refused where one is %s', (_name, type, text, reason) => {
    const bytes = new TextEncoder().encode(text);
    const id = idOf(bytes);
    const read = opened(textWith(quiltOf([id]), { [id]: urlOf(type, bytes) }));
    expect(read.pictures.size).toBe(0);
    expect(read.remarks).toEqual([`The picture of Cloth 0 was left out: ${reason}.`, LACKING]);
  });

  it('are refused where they lie about their type or are another picture', async () => {
    const file = plainImage(await imageFile({ kind: 'jpeg' }))!.bytes;
    const said = (url: unknown) => opened(textWith(quiltOf([idOf(file)]), { [idOf(file)]: url })).remarks[0];
    const of = 'The picture of Cloth 0 was left out:';
    expect(said(urlOf('image/png', file))).toBe(`${of} it says that it is image/png and is image/jpeg.`);
    expect(said(urlOf('image/jpeg', await imageFile({ kind: 'jpeg', width: 9 })))).toBe(
      `${of} it is not the picture that its number says.`,
    );
    expect(said(`${urlOf('image/jpeg', file)}*`)).toBe(`${of} its letters are no base64.`);
    expect(said('https://example.org/a.png')).toBe(`${of} it is not written as a picture in a file is.`);
    expect(said(`data:image/png;base64,${'A'.repeat(6_000_000)}`)).toBe(`${of} a picture is at most 4 MB.`);
    expect(said(7)).toBe(`${of} it is not written as a picture in a file is.`);
  });

  it.each([[[]], ['all'], [null], [3]])('may be %j, which costs the quilt nothing', (entry) => {
    const read = opened(textWith(createProject('p', 'Plain'), entry));
    expect(read.value).toEqual(createProject('p', 'Plain'));
    expect(read.remarks).toHaveLength(1);
  });

  it('say no more than a few sentences, however many are refused', () => {
    const ids = Array.from({ length: 40 }, (_, at) => String(at).padStart(64, '0'));
    const { remarks } = opened(textWith(quiltOf(ids), {}));
    expect(remarks).toHaveLength(7);
    expect(remarks.slice(-2)).toEqual(['So were 35 more.', LACKING]);
  });

  it('give sound pictures or a sentence for any damage, and never an exception', () => {
    const project = quiltOf(three.keys());
    const text = writeProject(project, three);
    const from = text.indexOf('"pictures"');
    const signs = 'AZaz09+/=",:{}[]\\ \n\u0000é'.split('');
    const change = fc.tuple(fc.nat(), fc.constantFrom(...signs), fc.constantFrom(0, 1, 2, 40));
    let kept = 0;
    let lost = 0;
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        let damaged = text;
        for (const [at, sign, out] of changes) {
          const place = from + (at % (damaged.length - from));
          damaged = damaged.slice(0, place) + sign + damaged.slice(place + out);
        }
        const read = openProject(damaged);
        if (!read.ok) {
          expect(read.problems.map((one) => speak(one.message)).join('')).not.toBe('');
          return;
        }
        for (const [id, picture] of read.pictures) {
          expect(idOf(picture.bytes)).toBe(id);
          expect(three.get(id)).toEqual(picture);
        }
        const lacking = [...picturesUsed(read.value)].some((id) => !read.pictures.has(id));
        expect(read.remarks.map((one) => speak(one)).includes(LACKING)).toBe(lacking);
        if (lacking) lost += 1;
        kept += read.pictures.size;
      }),
      { seed: 12, numRuns: runs(80, 500) },
    );
    expect(lost).toBeGreaterThan(runs(5, 50));
    expect(kept).toBeGreaterThan(runs(15, 50));
  });
});
