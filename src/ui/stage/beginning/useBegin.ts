// Begins the quilt: one command puts fabrics and what there is of them on the lists, then the whole quilt is laid out.
import { standIns } from '../../../cloth/standIns';
import type { Command } from '../../../editing/apply';
import type { NewFabric } from '../../../editing/commands/begin';
import type { BlocksWanted } from '../../../editing/whole/sewSets';
import type { Problem } from '../../../model/result';
import { useAppStore } from '../../app';
import { useRun } from '../../fields/Complaint';
import { useLaying } from '../../session';
import { useWrite } from '../../words';

/** A function that begins with so many fabrics that stand in, and why it was refused. */
export function useBegin(): [
  begin: (count: number, command: (fabrics: readonly NewFabric[]) => Command, want?: BlocksWanted) => void,
  problems: readonly Problem[],
] {
  const write = useWrite();
  const store = useAppStore();
  const { start } = useLaying();
  const [run, problems] = useRun();
  const begin = (
    count: number,
    command: (fabrics: readonly NewFabric[]) => Command,
    want: BlocksWanted = 'most',
  ) => {
    const fabrics = standIns(count).map(
      ({ colour, name }): NewFabric => ({
        name: write(name),
        colour,
        cloth: { kind: 'plain' },
        background: false,
      }),
    );
    if (!run(command(fabrics))) return;
    store.getState().goTo('wall');
    start({ want, cut: false });
  };
  return [begin, problems];
}
