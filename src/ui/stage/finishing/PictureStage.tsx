// The picture as it will be saved, with its caption and in its own proportions. It is shown as a picture, not as part of the page,
// so that it looks as it will elsewhere.
import { useEffect, useState } from 'react';
import { usePictureSvg } from '../../steps/finishing/usePictureSvg';
import { useSay } from '../../words';

export function PictureStage() {
  const say = useSay();
  const svg = usePictureSvg();
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return (
    <div className="fills framed">
      {address ? <img src={address} alt={say('The picture as it will be saved')} /> : null}
    </div>
  );
}
