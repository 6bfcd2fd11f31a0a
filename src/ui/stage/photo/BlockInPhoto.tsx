// One photograph of a block: its corners, the block squared up, what was read of it, and what becomes of it.
import { RotateCw, Trash2 } from 'lucide-react';
import { useMemo, useState } from 'react';
import { addPictured, type NewPictured } from '../../../editing/pictured/addPictured';
import { addAsPieced } from '../../../editing/pictured/makePieced';
import { tieToBlock } from '../../../editing/pictured/tieToBlock';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Problem } from '../../../model/result';
import { type BlockPhoto, type BlockPhotos, isInQuilt } from '../../../store/photo/blockPhotos';
import { doubtfulRims, withCorrected } from '../../../store/photo/corrected';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { useSession } from '../../session';
import { useSay } from '../../words';
import { BandsRead } from './BandsRead';
import { knownWords, lightWords } from './bandWords';
import { CornerPicture } from './CornerPicture';
import { SquaredAndRead } from './SquaredAndRead';

interface Props {
  photo: BlockPhoto;
  work: BlockPhotos;
}

export function BlockInPhoto({ photo, work }: Props) {
  const say = useSay();
  const { file, name, href, opened, laid, found, problems, done, read } = photo;
  const inQuilt = useApp((app) => isInQuilt(photo, app.project));
  return (
    <article className="picture-in-work" aria-label={say('Photograph {name}', { name })}>
      <div className="sheet-of-paper">
        <p className="quiet">
          {say(
            found
              ? 'Corners found. Check each: drag it, or focus it and press arrows.'
              : 'Lay the corners on the corners of the block: drag each, or focus it and press arrows.',
          )}
        </p>
        <CornerPicture
          label={say('Photograph {name}', { name })}
          href={href}
          size={opened}
          corners={laid.corners}
          onLay={(corners) => work.lay(file.key, corners)}
        />
        <div className="row">
          <button type="button" className="button" onClick={() => work.turn(file.key)}>
            <RotateCw size={16} aria-hidden /> {say('Turn it a quarter')}
          </button>
          <button type="button" className="button" onClick={() => work.remove(file.key)}>
            <Trash2 size={16} aria-hidden /> {say('Leave this photograph out')}
          </button>
        </div>
        <Complaint problems={problems} />
        {problems.length > 0 ? (
          <button type="button" className="button" onClick={() => work.readAgain(file.key)}>
            {say('Read it again')}
          </button>
        ) : null}
      </div>
      {done && inQuilt ? (
        <p className="sheet-of-paper" role="status">
          <strong>{say(done.words)}</strong>
        </p>
      ) : read ? (
        <ReadPart photo={photo} work={work} />
      ) : null}
    </article>
  );
}

function ReadPart({ photo, work }: Props) {
  const say = useSay();
  const { file, corrected, read } = photo;
  const block = read!.block;
  const shown = useMemo(() => withCorrected(block.shown, corrected), [block, corrected]);
  const doubtful = doubtfulRims(shown);
  return (
    <div className="sheet-of-paper photo-read">
      <SquaredAndRead href={read!.href} shown={shown} />
      <p className="quiet">{say(lightWords(block))}</p>
      <p role="status">
        <strong>
          {say(
            doubtful === 0
              ? 'All rims are read.'
              : counted(doubtful, '1 rim is doubtful.', '{count} rims are doubtful.'),
          )}
        </strong>{' '}
        {say('Press a strip to put it right.')}
      </p>
      <WhatBecomes photo={photo} work={work} />
      <BandsRead
        shown={shown}
        read={block.wedges}
        onTell={(place, band, fabric) => work.tell(file.key, place, band, fabric)}
        onRead={(place, band) => work.fabricOf(file.key, place, band)}
      />
    </div>
  );
}

/** What the block becomes: tied to the one it looks like, on the wall as a picture, or pieced. */
function WhatBecomes({ photo, work }: Props) {
  const say = useSay();
  const store = useAppStore();
  const session = useSession();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const [keeping, setKeeping] = useState(false);
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const { file, corrected, read } = photo;
  const { known, shown, picture } = read!.block;
  const looks = knownWords(read!.block);
  const same = known && project.blocks.find(({ number }) => number === known.number);
  const reading = { wedges: withCorrected(shown, corrected), cornerShift: 0, cornerFabric: null };
  const place: Pick<NewPictured, 'number' | 'hang'> = { number: null, hang: 'firstEmpty' };
  const finish = (id: string, words: Phrase) => {
    work.finish(file.key, words, id);
    store.getState().announce(words);
  };
  /** Keeps the picture before a command names it; the command runs once it is kept. */
  const withPicture = async (then: (id: string) => void) => {
    if (keeping) return;
    setKeeping(true);
    const kept = await session.takePicture(picture.bytes);
    setKeeping(false);
    setRefused(kept.ok ? [] : kept.problems);
    if (kept.ok) then(kept.value);
  };
  const added = (id: string) => {
    const { number } = store.getState().project.blocks.at(-1)!;
    finish(id, phrase('It is block {block} now.', { block: number }));
  };
  return (
    <div className="stack">
      {same && looks ? (
        <div className="looks-like">
          <p>
            <strong>{say('{looks}.', { looks })}</strong>
          </p>
          <button
            type="button"
            className="button solid"
            onClick={() =>
              void withPicture((id) => {
                if (run(tieToBlock(project, same.id, { ...reading, picture: id }, known.quarters)))
                  finish(id, phrase('It is tied to block {block}.', { block: same.number }));
              })
            }
          >
            {say('It is block {block}: tie it', { block: same.number })}
          </button>
        </div>
      ) : null}
      <div className="row">
        <button
          type="button"
          className={same ? 'button' : 'button solid'}
          aria-disabled={keeping}
          onClick={() =>
            void withPicture((id) => {
              if (run(addPictured([{ ...reading, picture: id, ...place }]))) added(id);
            })
          }
        >
          {say('Put on the wall as a picture')}
        </button>
        <button
          type="button"
          className="button"
          aria-disabled={keeping}
          onClick={() =>
            void withPicture((id) => {
              if (run(addAsPieced({ ...reading, picture: id, ...place }))) added(id);
            })
          }
        >
          {say('Make it a pieced block')}
        </button>
      </div>
      <Complaint problems={refused.length > 0 ? refused : problems} />
    </div>
  );
}
