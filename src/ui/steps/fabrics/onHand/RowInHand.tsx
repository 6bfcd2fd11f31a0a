// Shared parts of rows of cloth and strips: the pencil button that opens a row, and the buttons at the foot of an open row.
import { Pencil, Trash2 } from 'lucide-react';
import { Apart } from '../../../fields/Apart';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';
import { useReturnFocus } from '../../useReturnFocus';

interface PencilProps {
  /** Name of the row, for screen readers. */
  name: string;
  open: boolean;
  onOpen: (open: boolean) => void;
}

export function RowPencil({ name, open, onOpen }: PencilProps) {
  const opener = useReturnFocus(open);
  useEscape(() => onOpen(false), open);
  return (
    <button
      ref={opener}
      type="button"
      className="button bare"
      aria-expanded={open}
      aria-label={name}
      onClick={() => onOpen(!open)}
    >
      <Pencil size={15} aria-hidden />
    </button>
  );
}

interface FootProps {
  /** Name of the row, for screen readers. */
  name: string;
  removes: string;
  onClose: () => void;
  onRemove: () => void;
}

export function RowFoot({ name, removes, onClose, onRemove }: FootProps) {
  const say = useSay();
  return (
    <div className="spread">
      <button type="button" className="button" onClick={onClose}>
        {say('Done')}
        <Apart of={name} />
      </button>
      <button
        type="button"
        className="button"
        onClick={() => {
          onClose();
          onRemove();
        }}
      >
        <Trash2 size={16} aria-hidden /> {say(removes)}
        <Apart of={name} />
      </button>
    </div>
  );
}
