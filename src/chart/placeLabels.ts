/** A mark that wants its name beside it. [px, y downwards] */
export interface Labelled {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** Where a name stands: its anchor and the side of it that the text runs to. [px] */
export interface LabelPlace {
  readonly x: number;
  readonly y: number;
  readonly align: 'left' | 'center' | 'right';
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Mean width of a letter of a chart’s lettering, and the height of a line. [px] */
const LETTER_PX = 7.4;
const LINE_PX = 16;
/** Half the size of a mark, and the space between mark and name. [px] */
const MARK_PX = 7;
const GAP_PX = 12;
/** Space kept on either side of a name, so that two do not read as one. [px] */
const APART_PX = 4;
/** Half the width that a line keeps free of names. [px] */
const THIN_PX = 2;

/** Sides tried in turn. */
const SIDES = [
  { dx: GAP_PX, dy: 0, align: 'left' },
  { dx: -GAP_PX, dy: 0, align: 'right' },
  { dx: 0, dy: -16, align: 'center' },
  { dx: 0, dy: 17, align: 'center' },
  { dx: GAP_PX - 3, dy: -12, align: 'left' },
  { dx: GAP_PX - 3, dy: 13, align: 'left' },
  { dx: -GAP_PX + 3, dy: -12, align: 'right' },
  { dx: -GAP_PX + 3, dy: 13, align: 'right' },
] as const;

/**
 * Places names beside their marks so that none covers a mark or another name; those for which there is no room get
 * none. Earlier marks choose first.
 * @param inside the room that names must stay in [px]
 * @param thin points of lines that names keep clear of as well [px]
 */
export function placeLabels(
  marks: readonly Labelled[],
  inside: Box,
  thin: readonly { readonly x: number; readonly y: number }[] = [],
): (LabelPlace | null)[] {
  const around =
    (half: number) =>
    ({ x, y }: { readonly x: number; readonly y: number }): Box => ({
      left: x - half,
      right: x + half,
      top: y - half,
      bottom: y + half,
    });
  const taken: Box[] = [...marks.map(around(MARK_PX)), ...thin.map(around(THIN_PX))];
  return marks.map(({ x, y, text }) => {
    for (const { dx, dy, align } of SIDES) {
      const place = { x: x + dx, y: y + dy, align };
      const box = boxOf(place, text.length * LETTER_PX);
      const fits =
        box.left >= inside.left &&
        box.right <= inside.right &&
        box.top >= inside.top &&
        box.bottom <= inside.bottom;
      if (!fits || taken.some((other) => overlap(box, other))) continue;
      taken.push(box);
      return place;
    }
    return null;
  });
}

function boxOf({ x, y, align }: LabelPlace, width: number): Box {
  const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
  return {
    left: left - APART_PX,
    right: left + width + APART_PX,
    top: y - LINE_PX / 2,
    bottom: y + LINE_PX / 2,
  };
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
