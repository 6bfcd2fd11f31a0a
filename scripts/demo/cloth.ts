// The cloth of the demo quilts: four palettes of our own, each from near black to near white. Names tell what one sees.
import type { Fabric, PrintMotif } from '../../src/model/project';

type Row = readonly [
  id: string,
  name: string,
  ground: string,
  motif: PrintMotif | 'plain',
  inks: readonly string[],
  repeat?: number,
  angle?: number,
];

function cloth(rows: readonly Row[], background: readonly string[], firstSeed: number): Fabric[] {
  return rows.map(([id, name, colour, motif, inks, repeat = 1.5, angle = 0], index) => ({
    id,
    name,
    colour,
    cloth:
      motif === 'plain'
        ? { kind: 'plain' }
        : { kind: 'print', print: { motif, inks: [...inks], repeat, angle, seed: firstSeed + index } },
    background: background.includes(id),
  }));
}

/** Ink, rope, brick and brass: a reading corner above a harbour. */
export const harbourCloth = cloth(
  [
    ['sailcloth', 'Sailcloth with faint specks', '#f3ecdc', 'speckle', ['#e2d6bd', '#e9dfca'], 1.6],
    ['ink', 'Night ink, tiny stars', '#17233a', 'stars', ['#6f8299', '#3c4e69'], 2.2],
    ['deep', 'Deep water scales', '#1f3c57', 'scales', ['#3d6482', '#2c4f6d'], 2.4],
    ['tide', 'Tide lines on slate blue', '#3f6a86', 'waves', ['#8fb2c2', '#2c506b'], 2],
    ['teal', 'Bottle teal crosshatch', '#1f5a5c', 'crosshatch', ['#3a7f7c', '#17474b'], 1.8],
    ['gull', 'Gull grey gingham', '#eceae2', 'gingham', ['#7f8d96'], 1.3],
    ['fog', 'Fog blue sprigs', '#b9cdd3', 'sprig', ['#f2efe4', '#7d9aa6', '#d8b45e'], 2.2],
    ['sky', 'Washed sky dots', '#8db4c4', 'dots', ['#eef2ec', '#5f8ea3'], 1.7],
    ['brick', 'Quay brick check', '#a8432f', 'check', ['#e3b79a', '#6f2a20'], 2],
    ['buoy', 'Buoy orange leaves', '#d9703b', 'leaves', ['#f3c08a', '#b24f25'], 2.2],
    ['brass', 'Old brass ditsy', '#c9993f', 'ditsy', ['#f4e2ae', '#7d5a22', '#a0762d'], 2],
    ['rope', 'Rope and sand stripe', '#dcc79c', 'stripe', ['#b08a55', '#f3e7cb'], 2.2],
    ['coral', 'Faded coral dots', '#e2a08c', 'dots', ['#f8e3d4', '#c8755f'], 1.5],
    ['oar', 'Oar brown hatch', '#5b3a2a', 'crosshatch', ['#7d5741', '#452a1e'], 1.8],
    ['lamp', 'Reading lamp yellow', '#eed79a', 'leaves', ['#d8b566', '#f7ebc6'], 2],
    ['page', 'Page edge stripe', '#f6f0e2', 'stripe', ['#c9d4d2', '#dfc9a8'], 1.8],
  ],
  ['sailcloth'],
  101,
);

/** Plum, damson, lichen and blossom: an orchard from February to the jam pan. */
export const orchardCloth = cloth(
  [
    ['damson', 'Damson skin, fine specks', '#2b1a33', 'speckle', ['#5a3d63', '#43294d'], 1.8],
    ['plum', 'Ripe plum ditsy', '#58264f', 'ditsy', ['#c58aa9', '#8f5183', '#7a3c6c'], 2.2],
    ['bruise', 'Bruised violet leaves', '#4a3a68', 'leaves', ['#7f6fa3', '#5f4e82'], 2.4],
    ['jam', 'Jam pan red dots', '#8c2440', 'dots', ['#d9768a', '#66172e'], 1.6],
    ['rose', 'Rosehip sprigs', '#b4475a', 'sprig', ['#f0c3bd', '#7c2b3c', '#f5dfb2'], 2.4],
    ['mauve', 'Evening mauve scales', '#9a7bab', 'scales', ['#c9b3d3', '#7d5f90'], 2.4],
    ['lilac', 'Lilac mist check', '#c9b7d6', 'check', ['#8f76a6', '#efe7f1'], 2],
    ['blossom', 'Blossom on pink ground', '#efc9cb', 'ditsy', ['#fdf3ee', '#cf8791', '#9aa67d'], 2],
    ['petal', 'Fallen petals', '#f6e4df', 'leaves', ['#e4b4b6', '#efcfca'], 2],
    ['bark', 'Wet bark hatch', '#33261f', 'crosshatch', ['#5a463a', '#241a15'], 1.8],
    ['ladder', 'Ladder wood stripe', '#8a6242', 'stripe', ['#b98f65', '#61422b'], 2],
    ['lichen', 'Lichen mustard leaves', '#b99a34', 'leaves', ['#e3cd78', '#8e7424'], 2.2],
    ['moss', 'Mossy wall crosshatch', '#5d6a34', 'crosshatch', ['#86935a', '#465226'], 1.8],
    ['grass', 'Orchard grass waves', '#7f9656', 'waves', ['#b4c48a', '#5d7340'], 1.9],
    ['sage', 'Sage leaf gingham', '#eef0e2', 'gingham', ['#8ea37c'], 1.4],
    ['greengage', 'Greengage dots', '#c3c97f', 'dots', ['#f2f1cf', '#98a355'], 1.5],
    ['wasp', 'Wasp yellow sprigs', '#e2b650', 'sprig', ['#7d4a22', '#a8772c', '#f9edc4'], 2.2],
    ['custard', 'Custard cream stars', '#f4e5b6', 'stars', ['#dcc07a', '#e9d59b'], 2],
    ['frost', 'February frost specks', '#f1efe9', 'speckle', ['#cfcbd6', '#dedbe0'], 1.8],
    ['dusk', 'Dusk blue stars', '#39466b', 'stars', ['#a9b3cf', '#5f6c93'], 2.2],
  ],
  ['frost'],
  211,
);

/** Storm, snow, lamp and oilskin: a winter on the rock. */
export const lighthouseCloth = cloth(
  [
    ['snow', 'Snow with a grey fleck', '#f2f1ec', 'speckle', ['#d5d8d8', '#e3e4e1'], 1.7],
    ['night', 'Midwinter night', '#141d2e', 'crosshatch', ['#2c3a52', '#0d1420'], 1.8],
    ['storm', 'Storm blue waves', '#2b4a66', 'waves', ['#5f86a3', '#1f374e'], 2.1],
    ['slate', 'Wet slate scales', '#46535f', 'scales', ['#76838e', '#353f49'], 2.4],
    ['granite', 'Granite specks', '#8b9196', 'speckle', ['#c6c9ca', '#5f666c', '#474d52'], 1.6],
    ['ice', 'Thin ice check', '#c6d6de', 'check', ['#7f9fb2', '#eff4f5'], 2],
    ['gale', 'Gale grey stripe', '#aab8c0', 'stripe', ['#6f828e', '#dfe6e8'], 2],
    ['knit', 'Keeper’s jersey dots', '#1e3357', 'dots', ['#7f95b3', '#4d658c'], 2],
    ['oilskin', 'Oilskin yellow leaves', '#e3b23c', 'leaves', ['#f3d584', '#b78723'], 2.2],
    ['lamp', 'Lamp glow stars', '#f5e3ac', 'stars', ['#dcb95c', '#e8cd84'], 2],
    ['beacon', 'Beacon red gingham', '#f4ebe2', 'gingham', ['#b3312c'], 1.4],
    ['red', 'Tower band red', '#a32a2a', 'crosshatch', ['#c4524a', '#7f1e20'], 1.8],
    ['rust', 'Rusted railing sprigs', '#83412a', 'sprig', ['#e6b28d', '#c07a4e', '#f3dcc0'], 2.2],
    ['kelp', 'Kelp green leaves', '#3c4f3c', 'leaves', ['#6d8266', '#54684f'], 2.4],
    ['samphire', 'Samphire ditsy', '#93a583', 'ditsy', ['#eef0da', '#5d7253', '#c9a14d'], 2],
    ['tea', 'Strong tea stripe', '#b98a58', 'stripe', ['#8a5f37', '#e2c096'], 2],
    ['oat', 'Oatmeal sprigs', '#e3d7bd', 'sprig', ['#a35b3f', '#8f9a86', '#e3b23c'], 2.2],
  ],
  ['snow'],
  331,
);

/** Clay, slip, celadon and cobalt: a kiln shed being made ready. */
export const kilnCloth = cloth(
  [
    ['slip', 'White slip', '#f4efe6', 'plain', []],
    ['kiln', 'Kiln black hatch', '#221d1b', 'crosshatch', ['#433a35', '#171312'], 1.8],
    ['iron', 'Iron glaze specks', '#4a2b22', 'speckle', ['#a0583c', '#2f1a15'], 1.7],
    ['terracotta', 'Terracotta leaves', '#b65b3c', 'leaves', ['#dd9270', '#8d4029'], 2.2],
    ['shino', 'Orange peel dots', '#dd9a6c', 'dots', ['#f6d9bd', '#b8703f'], 1.5],
    ['blush', 'Bisque pink ditsy', '#eccbb9', 'ditsy', ['#fbf1e8', '#bf7a62', '#9aa98c'], 2],
    ['ochre', 'Ochre wash stripe', '#cf9a3d', 'stripe', ['#f0cf88', '#9a6c22'], 2],
    ['straw', 'Packing straw check', '#ecd9a3', 'check', ['#c79f50', '#f8eecb'], 2],
    ['celadon', 'Celadon scales', '#a9c4ab', 'scales', ['#dbe8d6', '#7fa188'], 2.4],
    ['copper', 'Copper green waves', '#3f7562', 'waves', ['#80ad97', '#2b5648'], 2],
    ['bottle', 'Bottle glass sprigs', '#1f4a3f', 'sprig', ['#cfe0c4', '#5f9079', '#e8c77a'], 2.3],
    ['cobalt', 'Cobalt brush stars', '#24428a', 'stars', ['#dfe5f0', '#5a77b8'], 2.1],
    ['delft', 'Tile blue gingham', '#f3f3ee', 'gingham', ['#4a6fb0'], 1.4],
    ['mist', 'Drying mist dots', '#c9d6df', 'dots', ['#f6f8f7', '#93a9b9'], 1.6],
  ],
  ['slip'],
  401,
);

/** Mud, reed, tar and painted boards: a ferry landing on a slow river. */
export const ferryCloth = cloth(
  [
    ['mist', 'River mist flecks', '#eef0ea', 'speckle', ['#cfd6cf', '#dde2dc'], 1.7],
    ['tar', 'Tarred plank hatch', '#1c1a1d', 'crosshatch', ['#39353a', '#121013'], 1.8],
    ['eddy', 'Eddy green waves', '#23403a', 'waves', ['#55796c', '#18302b'], 2.1],
    ['reed', 'Reed bed stripe', '#6f7a3c', 'stripe', ['#a9b06c', '#525b2a'], 2],
    ['willow', 'Willow leaves', '#a5b27a', 'leaves', ['#d3dba9', '#7f8c58'], 2.2],
    ['silt', 'Silt and pebbles', '#8d7b66', 'speckle', ['#c2b298', '#68594a'], 1.7],
    ['hull', 'Hull red dots', '#8f2f33', 'dots', ['#d88c80', '#6c2226'], 1.6],
    ['rosy', 'Evening rose sprigs', '#d79a94', 'sprig', ['#f5e1d8', '#a8605f', '#8c9663'], 2.2],
    ['ticket', 'Ticket pink check', '#eed3cc', 'check', ['#d09a92', '#faefe9'], 2],
    ['lantern', 'Stern lantern ditsy', '#dca63f', 'ditsy', ['#f7e3ad', '#8d6421', '#b78430'], 2],
    ['straw', 'Straw hat gingham', '#f3ead0', 'gingham', ['#cfae62'], 1.3],
    ['heron', 'Heron grey scales', '#6f808c', 'scales', ['#a3b1ba', '#56656f'], 2.3],
    ['kingfisher', 'Kingfisher blue stars', '#1d5f86', 'stars', ['#8cc0d6', '#d98a4a'], 2.1],
    ['noon', 'Noon sky dots', '#a9cbdc', 'dots', ['#eff6f7', '#7ba5ba'], 1.5],
  ],
  ['mist'],
  503,
);
