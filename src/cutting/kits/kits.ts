// Kits of the quilt: what goes into one, what to order for so many, what is left over, and what one costs. Everything comes
// from the yardage of the whole quilt; nothing on hand is counted.
import { type Phrase, phrase } from '../../model/phrase';
import type { Fabric, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { type BackingYardage, backingPrice } from '../yardage/backingYardage';
import { type FabricYardage, fatQuarterPrice, priceOf } from '../yardage/fabricYardage';
import { type Priced, piecesCost, pricedLength, pricedQuarters, totalOf } from '../yardage/money';
import { yardage } from '../yardage/yardage';
import { type Bolts, boltsFor } from './bolts';
import { type PrecutStrips, precutStrips } from './precutStrips';

/** Strips alike in one kit, and the label they carry. */
export interface KitStrips {
  /** Number of the fabric in the kit, and a letter for each kind of strip of it: 3b. */
  readonly label: string;
  readonly fabric: Fabric;
  readonly count: number;
  readonly width: Inches;
  readonly length: Inches;
  /** What is cut from them. */
  readonly uses: readonly Phrase[];
}

/** Its cost is that of its cloth in one kit. */
export interface KitFabric extends Priced {
  readonly number: number;
  readonly fabric: Fabric;
  /** In one kit: cloth off the bolt in inches, or fat quarters. */
  readonly inches: Inches;
  readonly fatQuarters: number;
  readonly strips: readonly KitStrips[];
  /** Whether the lengths of the backing are in it. */
  readonly withBacking: boolean;
  /** Bolts to order; null where a strip is longer than a bolt. */
  readonly order: Bolts | null;
}

export interface Kits {
  readonly count: number;
  readonly fabrics: readonly KitFabric[];
  /** Bought apart, in the kit where that is chosen; null too where it is in the cloth of its fabric. */
  readonly backing:
    | (Priced & {
        /** Null while it is not chosen. */
        readonly fabric: Fabric | null;
        readonly inches: Inches;
        readonly order: Bolts | null;
      })
    | null;
  /** The strips of the sets from precut rolls instead; null where they do not come to it. */
  readonly precuts: PrecutStrips | null;
  /** What a kit costs beside its cloth, to the cent. */
  readonly extra: number;
  /** Price of one kit with everything in it, and of all of them; null while a price is missing. */
  readonly price: number | null;
  readonly together: number | null;
  /** What has no price yet. */
  readonly unpriced: readonly Phrase[];
  /** What of the quilt is in no kit. */
  readonly remarks: readonly Phrase[];
}

/** So many kits as the project says, at its prices. */
export function kits(project: Project): Kits {
  const { count, cutAs } = project.buying.kits;
  // Strips come off the bolt: a kit cut into strips has no use for fat quarters.
  const { buying } = project;
  const asked: Project = {
    ...project,
    buying: {
      ...buying,
      fatQuarters: cutAs === 'strips' ? false : buying.fatQuarters,
      backing: buying.kits.backing ? buying.backing : { ...buying.backing, fabric: null },
    },
  };
  const list = yardage({ ...asked, stripsOnHand: [], clothOnHand: [] }, 'whole');
  const fabrics = list.fabrics
    .filter((one) => one.buy.kind !== 'nothing')
    .map((one, index) => kitFabric(project, one, index + 1));
  const backing = buying.kits.backing && list.backing ? kitBacking(project, list.backing) : null;
  const extra = piecesCost(1, project.buying.kits.extra);
  const price = totalOf([...fabrics.map((one) => one.cost), ...(backing ? [backing.cost] : []), extra]);
  const unpriced = fabrics
    .filter((one) => one.cost === null)
    .map((one) => phrase('{fabric}', { fabric: one.fabric.name }));
  if (backing?.cost === null) unpriced.push(phrase('the backing'));
  return {
    count,
    fabrics,
    backing,
    precuts: precutStrips(project),
    extra,
    price,
    together: price === null ? null : piecesCost(count, price),
    unpriced,
    remarks: list.remarks,
  };
}

function kitFabric(project: Project, one: FabricYardage, number: number): KitFabric {
  const { fabric, layout, buy } = one;
  const { count, bolt, cutAs } = project.buying.kits;
  if (buy.kind === 'fatQuarters') {
    return {
      number,
      fabric,
      inches: 0,
      fatQuarters: buy.count,
      strips: [],
      withBacking: false,
      order: null,
      ...pricedQuarters(buy.count, fatQuarterPrice(project, fabric), project),
    };
  }
  const asStrips = cutAs === 'strips';
  const bought = buy.kind === 'length' ? buy.inches : 0;
  const inches = asStrips ? layout.length : bought;
  const depths = asStrips ? layout.strips.map((strip) => strip.along) : [bought];
  return {
    number,
    fabric,
    inches,
    fatQuarters: 0,
    withBacking: one.lines.some((line) => line.step === 'backing'),
    strips: asStrips ? kitStrips(one, number, project.preferences.usableWidth) : [],
    order: boltsFor(count, { inches, strips: depths }, bolt, asStrips ? project.buying.straighten : 0),
    ...pricedLength(
      inches,
      priceOf(project, fabric),
      project,
      asStrips ? phrase('{cloth}', { cloth: { inches } }) : undefined,
    ),
  };
}

function kitBacking(project: Project, { layout, fabric, apart }: BackingYardage): Kits['backing'] {
  if (!apart) return null;
  const { inches } = apart.buy;
  const { count, bolt } = project.buying.kits;
  const lengths = layout.cuts.flatMap((cut) => Array.from({ length: cut.count }, () => cut.along));
  return {
    fabric,
    inches,
    order: boltsFor(count, { inches, strips: lengths }, bolt, 0),
    ...pricedLength(inches, backingPrice(project, fabric), project),
  };
}

/** Strips of one kit, alike ones together, in the order they are cut. */
function kitStrips(one: FabricYardage, number: number, width: Inches): KitStrips[] {
  const groups = new Map<string, { count: number; along: Inches; lines: number[] }>();
  for (const strip of one.layout.strips) {
    const lines = Array.from(new Set(strip.rows.map((row) => row.line)));
    const key = `${Math.round(strip.along * 1e4)} ${lines.join(' ')}`;
    const group = groups.get(key) ?? { count: 0, along: strip.along, lines };
    group.count += 1;
    groups.set(key, group);
  }
  return Array.from(groups.values(), (group, index) => ({
    label: `${number}${letter(index)}`,
    fabric: one.fabric,
    count: group.count,
    width: group.along,
    length: width,
    uses: group.lines.flatMap((line) => one.lines[line]!.pieces.map((piece) => piece.what)),
  }));
}

/** a … z, aa, ab … */
function letter(index: number): string {
  const rest = Math.floor(index / 26);
  return (rest > 0 ? letter(rest - 1) : '') + String.fromCharCode(97 + (index % 26));
}
