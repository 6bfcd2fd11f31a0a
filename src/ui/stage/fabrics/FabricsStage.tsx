// The large area of the step Fabrics: the fabrics laid out as pieces of cloth, or the grid into which strips are entered.
import { useApp } from '../../app';
import { FabricsLaidOut } from './FabricsLaidOut';
import { StripGrid } from './grid/StripGrid';

export function FabricsStage() {
  const strips = useApp((app) => app.laid.strips);
  return strips ? <StripGrid /> : <FabricsLaidOut />;
}
