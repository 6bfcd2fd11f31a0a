// Makes a photographed fabric of one strip of a block: its patch is read, its tile saved, and the fabric added and chosen. The button
// for it; what was refused is told by whoever shows it.
import { Plus } from 'lucide-react';
import { useState } from 'react';
import { addFabric } from '../../../editing/commands/fabrics';
import { capital, freeName } from '../../../model/name';
import type { FabricId } from '../../../model/project';
import type { Problem, Result } from '../../../model/result';
import { photoCloth } from '../../../store/photo/photoFabric';
import type { FabricRead } from '../../../store/photo/photoJobs';
import { useAppStore } from '../../app';
import { useSession } from '../../session';
import { useSay, useWrite } from '../../words';

/** Null: it was stopped. */
export type ReadStrip = () => Promise<Result<FabricRead> | null>;

const NONE: readonly Problem[] = [];

export function useFabricOfStrip(read: ReadStrip, onMade: (fabric: FabricId) => void) {
  const write = useWrite();
  const store = useAppStore();
  const session = useSession();
  const [busy, setBusy] = useState(false);
  const [problems, setProblems] = useState(NONE);
  const added = async (found: FabricRead): Promise<readonly Problem[]> => {
    const picture = await session.takePicture(found.tile.bytes);
    if (!picture.ok) return picture.problems;
    const cloth = photoCloth(found, picture.value);
    if (!cloth.ok) return cloth.problems;
    const { project, run } = store.getState();
    const taken = new Set(project.fabrics.map(({ name }) => name));
    const name = freeName(capital(write(found.name)), taken);
    return run(addFabric({ name, ...cloth.value, background: false }), 'here');
  };
  const make = async () => {
    if (busy) return;
    setBusy(true);
    setProblems(NONE);
    const found = await read();
    const refused = found?.ok ? await added(found.value) : (found?.problems ?? NONE);
    setBusy(false);
    setProblems(refused);
    if (found?.ok && refused.length === 0) onMade(store.getState().project.fabrics.at(-1)!.id);
  };
  return { make, busy, problems };
}

interface Props {
  making: ReturnType<typeof useFabricOfStrip>;
  /** The strip in words, where several buttons stand on the page. */
  strip?: string;
}

export function FabricOfStrip({ making: { make, busy }, strip }: Props) {
  const say = useSay();
  return (
    <button
      type="button"
      className="button"
      aria-label={strip && say('{strip}: make a fabric of this strip', { strip })}
      aria-disabled={busy}
      onClick={() => void make()}
    >
      <Plus size={16} aria-hidden /> {say(busy ? 'Making the fabric' : 'Make a fabric of this strip')}
    </button>
  );
}
