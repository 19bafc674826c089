import { describe, expect, it } from 'vitest';
import { placeLabels } from '../../src/chart/placeLabels.ts';
import fc from '../fastCheck.ts';

const ROOM = { left: 0, right: 300, top: 0, bottom: 200 };

/** The room of a placed name as the drawing will take it up, a little under what was reckoned with. */
function boxOf({ x, y, align }: { x: number; y: number; align: string }, text: string) {
  const width = text.length * 7;
  const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - 7, bottom: y + 7 };
}

describe('placeLabels', () => {
  it('puts a name to the right of its mark where there is room, else to the left', () => {
    const [free, atEdge] = placeLabels(
      [
        { x: 50, y: 50, text: 'free' },
        { x: 290, y: 120, text: 'at the edge' },
      ],
      ROOM,
    );
    expect(free?.align).toBe('left');
    expect(free?.x).toBeGreaterThan(50);
    expect(atEdge?.align).toBe('right');
  });

  it('gives no name where there is no room at all', () => {
    expect(placeLabels([{ x: 5, y: 5, text: 'far too long for this room' }], { ...ROOM, right: 40 })).toEqual(
      [null],
    );
  });

  it('never lets two names meet, nor a name leave the room', () => {
    const mark = fc.record({
      x: fc.integer({ min: 0, max: 300 }),
      y: fc.integer({ min: 0, max: 200 }),
      text: fc.constantFrom('2,4-D', 'imazamox', 'thifensulfuron-methyl'),
    });
    fc.assert(
      fc.property(fc.array(mark, { maxLength: 30 }), (marks) => {
        const boxes = placeLabels(marks, ROOM).flatMap((place, index) =>
          place === null ? [] : [boxOf(place, marks[index].text)],
        );
        for (const [index, a] of boxes.entries()) {
          expect(a.left).toBeGreaterThanOrEqual(ROOM.left);
          expect(a.right).toBeLessThanOrEqual(ROOM.right);
          for (const b of boxes.slice(index + 1)) {
            const meet = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
            expect(meet).toBe(false);
          }
        }
      }),
    );
  });
});
