import { useState } from 'preact/hooks';

/** A place on a drawing, from its upper left corner, in the drawing’s own measure. [px] */
export interface DrawnPlace {
  readonly x: number;
  readonly y: number;
}

/** Follows the pointer over the first drawing inside an element; null off it. A tap stays until the next one. */
export function usePointedPlace() {
  const [place, setPlace] = useState<DrawnPlace | null>(null);
  const follow = (event: PointerEvent) => setPlace(placeOn(event.currentTarget as HTMLElement, event));
  return {
    place,
    handlers: {
      onPointerDown: follow,
      onPointerMove: follow,
      onPointerLeave(event: PointerEvent) {
        if (event.pointerType !== 'touch') setPlace(null);
      },
    },
  };
}

function placeOn(element: HTMLElement, { clientX, clientY }: PointerEvent): DrawnPlace | null {
  const drawn = element.querySelector<SVGSVGElement>('.drawing svg');
  if (drawn === null) return null;
  const { left, top, width, height } = drawn.getBoundingClientRect();
  const [x, y] = [clientX - left, clientY - top];
  if (x < 0 || y < 0 || x > width || y > height) return null;
  // A drawing that is wider than its room is shown smaller.
  const scale = drawn.width.baseVal.value / width || 1;
  return { x: x * scale, y: y * scale };
}
