// The on-point setting without its borders: blocks turned by 45°, setting triangles along the sides and in the corners,
// sashing round every block. All pieces lie on a slanted grid and are clipped at the edge of the top.
import type { FabricId, Project } from '../model/project';
import type { Degrees, Inches } from '../model/units';
import { cellAtHalfPlace, halfPlace, isPlain } from '../model/wallCells';
import { clippedTo } from './clip';
import { area, extentAlong, type Outline, type Point, tilted } from './point';
import type { HalfPlace, SettingPart, SettingPiece } from './settingPiece';
import type { InnerSetting } from './straightSetting';
import { finishedBlock } from './wedge';

/**
 * The on-point setting of a wall. The points of rows × columns of blocks touch the edges, so the top is columns·√2·P by
 * rows·√2·P, where P is a block and one sashing (plane geometry). Half-grid places (model/wallCells) are P/√2 apart.
 */
export function onPointSetting(project: Project): InnerSetting {
  const { wall } = project;
  const grid = new SlantedGrid(project);
  return {
    width: grid.width,
    height: grid.height,
    centres: wall.cells.map((_, index) => {
      const { down, across } = halfPlace(index, wall);
      return grid.middle(down, across);
    }),
    pieces: [...grid.sashing(), ...grid.squares()],
  };
}

/** A tilted block's own right and own down, in degrees clockwise from the right. */
const RIGHT: Degrees = 45;
const DOWN: Degrees = 135;

class SlantedGrid {
  readonly width: Inches;
  readonly height: Inches;
  private readonly project: Project;
  private readonly block: Inches;
  private readonly gap: Inches;
  /** Distance of half-grid places: half the diagonal of a block with one sashing. */
  private readonly step: Inches;

  constructor(project: Project) {
    this.project = project;
    this.block = finishedBlock(project.wedge).width;
    const { sashing } = project.setting;
    this.gap = sashing.where === 'none' ? 0 : sashing.width;
    this.step = (this.block + this.gap) / Math.SQRT2;
    this.width = 2 * this.step * project.wall.columns;
    this.height = 2 * this.step * project.wall.rows;
  }

  middle(down: number, across: number): Point {
    return { x: (across + 1) * this.step, y: (down + 1) * this.step };
  }

  /** The plain squares, and the squares outside the wall, which the edge of the top clips to setting triangles. */
  squares(): SettingPiece[] {
    const { setting } = this.project;
    const { layout, plain } = setting;
    if (layout.kind !== 'onPoint') return [];
    return this.places(0).flatMap((place) => {
      const { down, across } = place;
      const cell = cellAtHalfPlace(down, across, this.project);
      const square = this.slanted(this.middle(down, across), this.block, this.block);
      if (cell >= 0) {
        return plain && isPlain(cell, this.project)
          ? this.cut('plain', plain.fabric, square, RIGHT, place)
          : [];
      }
      const level = down < 0 || down > 2 * this.project.wall.rows - 2;
      const upright = across < 0 || across > 2 * this.project.wall.columns - 2;
      // The grain runs along the edge of the top: the long side of a side triangle, the short sides of a corner triangle.
      if (level && upright) return this.cut('setting-corner', layout.corners, square, 0, place);
      return this.cut('side', layout.sides, square, level ? 0 : 90, place);
    });
  }

  /** Short strips between the blocks of a slanted row; between rows whole strips, or short strips and cornerstones. */
  sashing(): SettingPiece[] {
    const { sashing } = this.project.setting;
    const { gap, block, step } = this;
    if (gap === 0) return [];
    const stones = sashing.cornerstones;
    // The sashing crosses on the half-grid places without squares.
    const between = this.places(1).map((place) => ({ place, middle: this.middle(place.down, place.across) }));
    const short = this.places(0).flatMap(({ down, across }) => {
      const from = this.middle(down, across);
      const right = { x: from.x + step / 2, y: from.y + step / 2 };
      const below = { x: from.x - step / 2, y: from.y + step / 2 };
      return [
        ...this.cut('sashing', sashing.fabric, this.slanted(right, gap, block), DOWN, {
          down: down + 0.5,
          across: across + 0.5,
        }),
        ...(stones === undefined
          ? []
          : this.cut('sashing', sashing.fabric, this.slanted(below, block, gap), RIGHT, {
              down: down + 0.5,
              across: across - 0.5,
            })),
      ];
    });
    if (stones !== undefined) {
      return [
        ...short,
        ...between.flatMap(({ middle, place }) =>
          this.cut('cornerstone', stones, this.slanted(middle, gap, gap), RIGHT, place),
        ),
      ];
    }
    // A whole strip runs between two slanted rows, through all crossings with the same down − across.
    const starts = new Map(between.toReversed().map((one) => [one.place.down - one.place.across, one]));
    const reach = 2 * (this.width + this.height);
    return [
      ...short,
      ...Array.from(starts.values()).flatMap(({ middle, place }) =>
        this.cut('sashing', sashing.fabric, this.slanted(middle, reach, gap), RIGHT, place),
      ),
    ];
  }

  /** Half-grid places of squares (parity 0) or of crossings (parity 1), up to one place outside the wall on each side. */
  private places(parity: 0 | 1): HalfPlace[] {
    const { rows, columns } = this.project.wall;
    const found: HalfPlace[] = [];
    for (let down = -1; down <= 2 * rows - 1; down += 1) {
      for (let across = -1; across <= 2 * columns - 1; across += 1) {
        if (Math.abs(down + across) % 2 === parity) found.push({ down, across });
      }
    }
    return found;
  }

  /** A rectangle turned by 45°; before the turn `width` is level. */
  private slanted(middle: Point, width: Inches, height: Inches): Outline {
    return [
      { x: -width / 2, y: -height / 2 },
      { x: width / 2, y: -height / 2 },
      { x: width / 2, y: height / 2 },
      { x: -width / 2, y: height / 2 },
    ].map((corner) => {
      const turned = tilted(corner, 45);
      return { x: turned.x + middle.x, y: turned.y + middle.y };
    });
  }

  /** The piece clipped to the top; empty where it lies outside. */
  private cut(
    part: SettingPart,
    fabric: FabricId,
    outline: Outline,
    grain: Degrees,
    place: HalfPlace,
  ): SettingPiece[] {
    const left = clippedTo(outline, this.width, this.height);
    if (area(left) < 1e-9) return [];
    const { length, width } = extentAlong(left, grain);
    return [{ part, fabric, outline: left, grain, length, width, border: null, place }];
  }
}
