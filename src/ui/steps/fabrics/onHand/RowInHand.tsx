// What a row of the lists of cloth and strips shares: the pencil that opens it, and what stands at the foot of it when open.
import { Pencil, Trash2 } from 'lucide-react';
import { useSay } from '../../../words';
import { useReturnFocus } from '../../useReturnFocus';

interface PencilProps {
  /** For screen readers: what is changed. */
  name: string;
  open: boolean;
  onOpen: (open: boolean) => void;
}

export function RowPencil({ name, open, onOpen }: PencilProps) {
  const opener = useReturnFocus(open);
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
  removes: string;
  onClose: () => void;
  onRemove: () => void;
}

export function RowFoot({ removes, onClose, onRemove }: FootProps) {
  const say = useSay();
  return (
    <div className="spread">
      <button type="button" className="button" onClick={onClose}>
        {say('Done')}
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
      </button>
    </div>
  );
}
