// Advice on sewing and pressing a block, with the usual cautions. Common practice, no source.
import { useSay } from '../../words';
import { Caution } from '../Caution';

export function SewingAdvice() {
  const say = useSay();
  return (
    <section aria-labelledby="sew-title">
      <h3 id="sew-title">{say('Sewing it')}</h3>
      <ol className="advice">
        <li>
          {say(
            'Lay the wedges out in their places. Join them in pairs, the pairs into halves, the halves into the block.',
          )}
        </li>
        <li>{say('Let each pair of seams nest, pin there, and sew from the rim to the middle.')}</li>
        <li>{say('Ease the last seam where all points meet: pin the middle first, then outwards.')}</li>
        <li>{say('The edges are cut on the bias: press them down, never pull or slide.')}</li>
        <li>{say('Sew one block and measure it before you sew the rest.')}</li>
      </ol>
      <Caution about={['sewing', 'pressing']} />
    </section>
  );
}
