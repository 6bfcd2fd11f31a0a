// The way to a photograph of the wall, from which its blocks are read and hung. It lies on the large area (stage/photo/).
import { Camera } from 'lucide-react';
import { useAppStore } from '../../../app';
import { useSay } from '../../../words';

export function WallFromPhoto() {
  const say = useSay();
  const store = useAppStore();
  return (
    <section aria-labelledby="wall-photo">
      <h3 id="wall-photo">{say('The wall as it hangs')}</h3>
      <p className="quiet">
        {say('Photograph your design wall: its blocks are read and hung here as in the picture.')}
      </p>
      <button
        type="button"
        className="button"
        style={{ marginTop: 8 }}
        onClick={() => store.getState().lay({ photoWall: true, movesOpen: false })}
      >
        <Camera size={16} aria-hidden /> {say('From a photograph of the wall')}
      </button>
    </section>
  );
}
