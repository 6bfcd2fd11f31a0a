// A select of fabrics that shows the chosen one as cloth.
import { ChevronDown } from 'lucide-react';
import { Button, Label, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';
import type { Fabric, FabricId } from '../../model/project';
import { useApp } from '../app';
import { useSay } from '../words';
import { Swatch } from './Swatch';

interface Props {
  label: string;
  value: FabricId | null;
  onChange: (fabric: FabricId) => void;
  /** The fabrics to choose from; the quilt's fabrics unless given. */
  fabrics?: readonly Fabric[];
  hideLabel?: boolean;
  disabled?: boolean;
}

export function FabricPicker({ label, value, onChange, fabrics, hideLabel, disabled }: Props) {
  const say = useSay();
  const ofQuilt = useApp((app) => app.project.fabrics);
  return (
    <Select
      className="field"
      selectedKey={value}
      onSelectionChange={(key) => key !== null && onChange(String(key))}
      isDisabled={disabled ?? false}
      placeholder={say('Choose …')}
    >
      <Label className={hideLabel ? 'hidden-text' : 'label'}>{say(label)}</Label>
      <Button
        className="picker"
        style={{ display: 'flex', alignItems: 'center', gap: '0.5em', textAlign: 'left' }}
      >
        <SelectValue className="grow" style={{ overflowWrap: 'anywhere', lineHeight: 1.25 }} />
        <ChevronDown size={16} aria-hidden />
      </Button>
      <Popover className="popover" style={{ padding: 4, minWidth: 220 }}>
        <ListBox items={fabrics ?? ofQuilt} style={{ maxHeight: 320, overflow: 'auto', outline: 'none' }}>
          {(fabric) => (
            <ListBoxItem id={fabric.id} textValue={fabric.name} className="option">
              <span className="row" style={{ flexWrap: 'nowrap', minWidth: 0 }}>
                <Swatch fabric={fabric} size={22} />
                <bdi>{fabric.name}</bdi>
              </span>
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </Select>
  );
}
