/** The parts of a topology that outlines are drawn from. */
export interface Topology {
  readonly transform: {
    readonly scale: readonly [number, number];
    readonly translate: readonly [number, number];
  };
  /** Lines as steps from point to point. */
  readonly arcs: readonly (readonly (readonly [number, number])[])[];
  readonly objects: {
    readonly nation: {
      readonly geometries: readonly { readonly arcs: readonly (readonly (readonly number[])[])[] }[];
    };
  };
}

/** Outlines as SVG paths. */
export interface Outlines {
  /** Every border line once, coasts among them. */
  readonly borders: string;
  /** The whole country as areas. */
  readonly land: string;
}

type Line = readonly (readonly [number, number])[];

/** Draws the outlines of a topology of states whose points are map points already. */
export function outlinesOf({ transform, arcs, objects }: Topology): Outlines {
  const lines = arcs.map((arc) => absolute(arc, transform));
  const rings = objects.nation.geometries.flatMap(({ arcs: polygons }) => polygons.flat());
  return {
    borders: lines.map((line) => pathOf(line)).join(''),
    land: rings.map((ring) => `${pathOf(ring.flatMap((index) => arcAt(lines, index)))}Z`).join(''),
  };
}

/** A line by its number; a number below zero walks line ~number backwards. */
const arcAt = (lines: readonly Line[], index: number): Line =>
  index < 0 ? lines[~index].toReversed() : lines[index];

function absolute(arc: Line, { scale, translate }: Topology['transform']): Line {
  let [x, y] = [0, 0];
  return arc.map(([dx, dy]) => {
    x += dx;
    y += dy;
    return [x * scale[0] + translate[0], y * scale[1] + translate[1]] as const;
  });
}

/** A line, to a tenth of a pixel, steps too small to see left out. */
function pathOf(line: Line): string {
  let last = '';
  const steps = line
    .map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`)
    .filter((point) => {
      const isNew = point !== last;
      last = point;
      return isNew;
    });
  return `M${steps.join('L')}`;
}
