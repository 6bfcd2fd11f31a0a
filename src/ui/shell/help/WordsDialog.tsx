// The words of the trade and what they mean, over the page: the glossary, found by typing.
import { useState } from 'react';
import { termsLike } from '../../../model/words/glossary';
import { useSay } from '../../words';
import { HelpDialog } from './HelpDialog';

export function WordsDialog({ open, onClose }: { open: boolean; onClose: () => void }) {
  return (
    <HelpDialog title="Words of the trade" open={open} onClose={onClose}>
      <Words />
    </HelpDialog>
  );
}

function Words() {
  const say = useSay();
  const [sought, setSought] = useState('');
  const found = termsLike(sought, say);
  return (
    <>
      <label className="field">
        <span>{say('Find a word')}</span>
        <input
          type="search"
          autoComplete="off"
          value={sought}
          onChange={(event) => setSought(event.target.value)}
        />
      </label>
      <p className="quiet" role="status">
        {say(found.length === 1 ? '1 word' : '{count} words', { count: found.length })}
      </p>
      <dl className="help-list">
        {found.map(({ term, means }) => (
          <div key={term}>
            <dt>{say(term)}</dt>
            <dd>{say(means)}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
