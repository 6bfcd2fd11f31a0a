// The button that copies words to the clipboard, and what came of it; nothing where the browser cannot copy.
import { Copy } from 'lucide-react';
import { useState } from 'react';
import { type Phrase, phrase } from '../../../model/phrase';
import { useSay } from '../../words';

/** `text` is asked for when the button is pressed. */
export function CopyWords({ name, text }: { name: string; text: () => string }) {
  const say = useSay();
  const [told, setTold] = useState<Phrase | null>(null);
  // It is missing where the page came over plain http, whatever its type says.
  if (typeof navigator.clipboard?.writeText !== 'function') return null;
  const copy = () =>
    void navigator.clipboard.writeText(text()).then(
      () => setTold(phrase('Copied.')),
      () => setTold(phrase('The browser did not allow copying. Select the text and copy it.')),
    );
  return (
    <>
      <button type="button" className="button solid" onClick={copy}>
        <Copy size={16} aria-hidden /> {say(name)}
      </button>
      <p role="status" className={told ? undefined : 'hidden-text'}>
        {told ? say(told) : ''}
      </p>
    </>
  );
}
