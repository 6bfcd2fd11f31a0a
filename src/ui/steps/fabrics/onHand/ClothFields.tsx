// The fields of one row of cloth on hand: its kind, its two sides, and the number of pieces.
import type { ClothOnHand } from '../../../../model/project';
import type { Problem } from '../../../../model/result';
import { Choice } from '../../../fields/Choice';
import { CountField } from '../../../fields/CountField';
import { LengthField } from '../../../fields/LengthField';
import { CLOTH_KINDS, type ClothKind } from './clothWords';
import '../cloth.css';
import '../fabrics.css';

const KINDS = Object.keys(CLOTH_KINDS) as ClothKind[];
const MOST_PIECES = 10_000;

type Measures = Pick<ClothOnHand, 'kind' | 'depth' | 'stripLength' | 'count'>;

interface Props {
  cloth: Measures;
  /** Makes a change; returns why it was refused. */
  onChange: (to: Partial<Measures>) => readonly Problem[];
  /** Called when another kind is chosen; a form for new cloth then takes the usual sizes of that kind. */
  onKind: (kind: ClothKind) => void;
}

export function ClothFields({ cloth, onChange, onKind }: Props) {
  const words = CLOTH_KINDS[cloth.kind];
  return (
    <>
      <div className="onhand-kind">
        <Choice
          label="Kind"
          value={cloth.kind}
          options={KINDS.map((value) => ({ value, label: CLOTH_KINDS[value].name }))}
          onChange={onKind}
        />
      </div>
      <div className="fab-three">
        <LengthField
          key={words.depth}
          label={words.depth}
          value={cloth.depth}
          least={0.25}
          most={4000}
          onCommit={(depth) => onChange({ depth })}
        />
        <LengthField
          key={words.stripLength}
          label={words.stripLength}
          value={cloth.stripLength}
          least={1}
          most={4000}
          onCommit={(stripLength) => onChange({ stripLength })}
        />
        <CountField
          label="Pieces"
          value={cloth.count}
          least={1}
          most={MOST_PIECES}
          onCommit={(count) => onChange({ count })}
        />
      </div>
    </>
  );
}
