// One fabric of the cutting list: what to buy; when open, what is cut from it and how each figure is
// computed; its picture on the large area is brought into sight.

import type { CuttingLine } from '../../../../cutting/yardage/cuttingLine';
import type { FabricYardage } from '../../../../cutting/yardage/fabricYardage';
import { pieceWords, stripsAlike } from '../../../../cutting/yardage/lineWords';
import { CUTTING_STEPS, STEP_NAMES } from '../../../../cutting/yardage/neededPiece';
import type { CuttingScope } from '../../../../cutting/yardage/setStrips';
import { changeFabric } from '../../../../editing/commands/fabrics';
import { sellingUnit } from '../../../../model/buying';
import { useApp, useAppStore } from '../../../app';
import { Apart } from '../../../fields/Apart';
import { Fractions } from '../../../fields/Fractions';
import { Swatch } from '../../../fields/Swatch';
import { useSay } from '../../../words';
import { purchaseWords } from './purchaseWords';
import { showCloth } from './showCloth';

export function FabricCloth({ yardage, scope }: { yardage: FabricYardage; scope: CuttingScope }) {
  const say = useSay();
  const { light } = useAppStore().getState();
  const unit = useApp((app) => sellingUnit(app.project));
  const { fabric, onHand } = yardage;
  const problem = yardage.lines.find((line) => line.problem)?.problem ?? null;
  return (
    <li>
      <details
        className="cloth"
        onToggle={({ currentTarget }) => {
          if (currentTarget.open) showCloth(fabric.id);
        }}
      >
        {/* biome-ignore lint/a11y/noStaticElementInteractions: a summary takes the focus */}
        <summary onFocus={() => light(fabric.id)} onBlur={() => light(null)}>
          <Swatch fabric={fabric} size={26} />
          <bdi className="cloth-name">{fabric.name}</bdi>
          <span className="cloth-buy">
            <Fractions text={say(purchaseWords(yardage.buy, unit))} />
          </span>
          {onHand && !onHand.enough ? (
            <span className="cloth-note">
              <Fractions text={say(onHand.words)} />
            </span>
          ) : null}
          {problem ? (
            <span className="cloth-note complaint">
              <Fractions text={say(problem)} />
            </span>
          ) : null}
        </summary>
        <OpenCloth yardage={yardage} scope={scope} />
      </details>
    </li>
  );
}

function OpenCloth({ yardage, scope }: { yardage: FabricYardage; scope: CuttingScope }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { fabric, lines, layout, onHand } = yardage;
  return (
    <div className="cloth-open">
      {onHand?.enough && scope === 'whole' ? (
        <p className="quiet">
          <Fractions text={say(onHand.words)} />
        </p>
      ) : null}
      {CUTTING_STEPS.map((step) => {
        const own = lines.filter((line) => line.step === step);
        return own.length === 0 ? null : (
          <div key={step}>
            <h4>{say(STEP_NAMES[step])}</h4>
            <ul className="cut-lines">
              {own.map((line, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: lines are told apart by their order only
                <Line key={index} line={line} fabric={fabric.name} />
              ))}
            </ul>
          </div>
        );
      })}
      {layout.strips.length > 0 ? (
        <>
          <h4>{say('Cut from the fabric')}</h4>
          <ol className="cut-strips">
            {stripsAlike(layout).map((strips, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: strips are told apart by their order only
              <li key={index}>
                <Fractions text={say(strips.words)} />
                {strips.stock === null ? null : <span className="quiet"> {say('from fabric on hand')}</span>}
              </li>
            ))}
          </ol>
        </>
      ) : null}
      <ul className="workings">
        {yardage.why.map((sentence) => (
          <li key={sentence.say}>
            <Fractions text={say(sentence)} />
          </li>
        ))}
      </ul>
      <label className="check no-print">
        <input
          type="checkbox"
          checked={fabric.oneWay === true}
          onChange={() =>
            store.getState().run(changeFabric(project, fabric.id, { oneWay: fabric.oneWay !== true }))
          }
        />
        {say('The print has a way up')}
        <Apart of={fabric.name} />
      </label>
    </div>
  );
}

function Line({ line, fabric }: { line: CuttingLine; fabric: string }) {
  const say = useSay();
  return (
    <li>
      <details>
        <summary>
          {line.pieces.map((piece, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: pieces are told apart by their order only
            <span key={index} className="cut-line">
              <span>{say(piece.what)}</span>
              <span>
                <Fractions text={say(pieceWords(piece))} />
              </span>
            </span>
          ))}
          <Apart of={fabric} />
        </summary>
        <ul className="workings">
          {line.why.map((sentence, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: sentences of one working in their order
            <li key={index}>
              <Fractions text={say(sentence)} />
            </li>
          ))}
          {line.problem ? (
            <li>
              <Fractions text={say(line.problem)} />
            </li>
          ) : null}
        </ul>
      </details>
    </li>
  );
}
