// The cloth of the backing. Its lengths are cut from the cloth of its fabric with everything else; where no fabric is chosen,
// or the backing is of wider cloth than the rest, it is bought by itself.
import { sizeWithSeams } from '../../geometry/allowance';
import { layOut } from '../../geometry/setting';
import { wedgeProblem } from '../../geometry/wedge';
import { sellingUnit } from '../../model/buying';
import { findFabric } from '../../model/find';
import { type Phrase, phrase } from '../../model/phrase';
import type { Fabric, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { type BackingLayout, backingLayouts, bestBacking } from './backing';
import { layOutCutting } from './clothLayout';
import { buyWords, type ClothToBuy, toBuy } from './clothLength';
import { clothOnHand, type FabricYardage, type Piece, restWords, straightenWords } from './fabricYardage';
import { pricedLength } from './money';
import type { NeededPiece } from './neededPiece';
import type { CuttingScope } from './setStrips';

/** Cloth bought for the backing alone. */
export interface BackingCloth {
  readonly buy: ClothToBuy & { readonly why: readonly Phrase[] };
  /** Null without a price. */
  readonly cost: number | null;
  /** As of a fabric; null where no cloth of its fabric is as wide as this. */
  readonly onHand: FabricYardage['onHand'];
}

export interface BackingYardage {
  readonly layout: BackingLayout;
  /** All layouts in question, least cloth first. */
  readonly others: readonly BackingLayout[];
  /** Null while it is not chosen. */
  readonly fabric: Fabric | null;
  /** Null where its lengths are among the lines of its fabric. */
  readonly apart: BackingCloth | null;
  /** Rows for the lines of its fabric; empty where it is bought apart. */
  readonly pieces: readonly NeededPiece[];
  /** Of the cloth of its fabric on hand, what is not spent on a backing bought apart. */
  readonly stockLeft: readonly Piece[];
}

/** The backing of the top as the setting makes it; null where there is no top. */
export function backingYardage(project: Project, scope: CuttingScope): BackingYardage | null {
  if (wedgeProblem(project.wedge)) return null;
  const { backing } = project.buying;
  const { usableWidth } = project.preferences;
  const fabric = backing.fabric === null ? null : (findFabric(project, backing.fabric) ?? null);
  const top = layOut(project);
  const broad = clothWidth(project);
  const need = {
    ...sizeWithSeams(top, project.wedge.outerSeam),
    overhang: backing.overhang,
    clothWidth: broad,
    seam: backing.seam,
    oneWay: fabric?.oneWay === true,
    unit: project.preferences.unit,
  };
  const layout = bestBacking(need, backing.pieced);
  if (!layout) return null;
  const stock = fabric ? clothOnHand(project, fabric.id) : [];
  const others = backingLayouts(need);
  if (fabric && Math.abs(broad - usableWidth) < 1e-9) {
    return { layout, others, fabric, apart: null, pieces: backingPieces(layout, fabric), stockLeft: stock };
  }
  const isWide = (piece: { readonly across: Inches }) => piece.across >= broad - 1e-9;
  const wide = stock.filter(isWide);
  const laid = layOutCutting(layout.cuts, { width: broad }, wide);
  if (!laid) throw new Error('backingYardage: a length is wider than its cloth');
  const fromHand = scope === 'left' && wide.length > 0;
  const straightened = fromHand && fabric ? straightenWords(project, fabric.id) : [];
  const spent = new Set(laid.placed.map((cut) => laid.sheets[cut.sheet]!.stock));
  return {
    layout,
    others,
    fabric,
    apart: {
      ...bought(fromHand ? laid.length : layout.cloth, fabric, project, straightened),
      onHand: wide.length === 0 ? null : restWords(laid.length, project),
    },
    pieces: [],
    stockLeft: [
      ...wide.filter((_piece, index) => !spent.has(index)),
      ...stock.filter((piece) => !isWide(piece)),
    ],
  };
}

/** Usable width of the backing's cloth. */
export function clothWidth({ buying, preferences }: Pick<Project, 'buying' | 'preferences'>): Inches {
  return buying.backing.width ?? preferences.usableWidth;
}

/** `before` is what there is to say before the length is reckoned. */
function bought(
  cut: number,
  fabric: Fabric | null,
  project: Project,
  before: readonly Phrase[],
): Pick<BackingCloth, 'buy' | 'cost'> {
  const length = toBuy(cut, project.buying, sellingUnit(project));
  const { cost, costWords } = pricedLength(length.inches, backingPrice(project, fabric), project);
  return {
    buy: {
      ...length,
      why: [...before, ...buyWords(cut, length, project), ...(costWords ? [costWords] : [])],
    },
    cost,
  };
}

/** Price of a yard or metre of a backing bought apart; null where none is known. */
export function backingPrice({ buying }: Pick<Project, 'buying'>, fabric: Fabric | null): number | null {
  return buying.backing.price ?? fabric?.price ?? buying.price;
}

function backingPieces(layout: BackingLayout, fabric: Fabric): NeededPiece[] {
  return layout.cuts.map((cut, index): NeededPiece => {
    const last = index > 0;
    return {
      step: 'backing',
      fabric: fabric.id,
      what: last ? phrase('Pieces of the last width of the backing') : phrase('Lengths of the backing'),
      shape: 'length',
      width: cut.across,
      height: cut.along,
      count: cut.count,
      onHand: 0,
      upright: true,
      why: last ? [] : layout.why,
    };
  });
}

/** The backing by name, with its fabric where one is chosen. */
export function backingName({ fabric }: { readonly fabric: Fabric | null }): Phrase {
  return fabric ? phrase('Backing of {fabric}', { fabric: fabric.name }) : phrase('Backing');
}
