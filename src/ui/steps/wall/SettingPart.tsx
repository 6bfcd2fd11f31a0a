// How the blocks are set, part by part: layout, corner triangles, sashing, borders, binding.
import { useSay } from '../../words';
import { BindingPart } from './setting/BindingPart';
import { BordersPart } from './setting/BordersPart';
import { CornersPart } from './setting/CornersPart';
import { LayoutPart } from './setting/LayoutPart';
import { SashingPart } from './setting/SashingPart';
import './setting/setting.css';

export function SettingPart() {
  const say = useSay();
  return (
    <section aria-label={say('Setting')}>
      <h3>{say('Setting')}</h3>
      <div className="folds">
        <LayoutPart />
        <CornersPart />
        <SashingPart />
        <BordersPart />
        <BindingPart />
      </div>
    </section>
  );
}
