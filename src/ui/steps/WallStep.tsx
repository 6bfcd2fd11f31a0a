// Step 5, wall: findings and mends, the shuffle for balance, moves by hand, the size of the top and its setting.
import { useApp } from '../app';
import { LaidOut } from './LayOutQuilt';
import { StepHeading } from './StepHeading';
import { ByHandPart, MovesOnPaper } from './wall/byHand/ByHandPart';
import { WallFromPhoto } from './wall/byHand/WallFromPhoto';
import { Findings } from './wall/Findings';
import { SettingPart } from './wall/SettingPart';
import { SizeWanted } from './wall/setting/SizeWanted';
import { ShufflePart } from './wall/shuffle/ShufflePart';
import { WallFoot } from './wall/WallFoot';
import { WallKeysHelp } from './wall/WallKeysHelp';
import { WallSize } from './wall/WallSize';
import './wall/wallStep.css';

export function WallStep() {
  const id = useApp((app) => app.project.id);
  return (
    <>
      <StepHeading title="Wall" line="Hang the blocks, turn and swap them until nothing pulls the eye." />
      <WallFoot />
      <LaidOut />
      <Findings key={`findings ${id}`} />
      <ShufflePart key={`shuffle ${id}`} />
      <ByHandPart key={`by hand ${id}`} />
      <WallFromPhoto />
      <WallSize />
      <SizeWanted />
      <SettingPart />
      <WallKeysHelp />
      <MovesOnPaper />
    </>
  );
}
