import type { Figure } from '../api/contract.ts';
import { HALF_LIFE_TICKS, halfLifeShare } from './halfLifeScale.ts';

interface HalfLifeStripProps {
  readonly typicalDays: number;
  readonly mark: Figure['mark'];
  readonly lowDays?: number | null;
  readonly highDays?: number | null;
  /** Drawn wide, with names under the marks of the scale. */
  readonly wide?: boolean;
}

const WIDTH = 240;
const WIDE = 544;
const SIDE = 8;
const placeOn = (width: number) => (days: number) => SIDE + halfLifeShare(days) * (width - 2 * SIDE);

/** A half-life on the scale from days to years, with the span of what is published. The numbers stand beside it. */
export function HalfLifeStrip({ typicalDays, mark, lowDays, highDays, wide = false }: HalfLifeStripProps) {
  const width = wide ? WIDE : WIDTH;
  const at = placeOn(width);
  const x = at(typicalDays);
  const low = lowDays == null ? x : at(lowDays);
  const high = highDays == null ? x : at(highDays);
  return (
    <svg class="half-life" viewBox={`0 0 ${width} ${wide ? 40 : 20}`} aria-hidden="true">
      {HALF_LIFE_TICKS.map(({ days, name }) => (
        <g key={days}>
          <path class="half-life-tick" d={`M${at(days)} 2v16`} />
          {wide && (
            <text x={at(days)} y="36" text-anchor="middle">
              {name}
            </text>
          )}
        </g>
      ))}
      <path class="half-life-line" d={`M${SIDE} 10H${width - SIDE}`} />
      {high > low && <path class="half-life-span" d={`M${low} 10H${high}`} />}
      {mark === 'computed' ? (
        <path class="half-life-dot" data-mark={mark} d={`M${x} 3.500l6.500 6.500-6.500 6.500-6.500-6.500z`} />
      ) : (
        <circle class="half-life-dot" data-mark={mark} cx={x} cy="10" r="5.200" />
      )}
    </svg>
  );
}

/** The scale over a column of strips. */
export function Scale() {
  const at = placeOn(WIDTH);
  return (
    <svg class="half-life" viewBox={`0 0 ${WIDTH} 18`} aria-hidden="true">
      {HALF_LIFE_TICKS.map(({ days, name }) => (
        <text key={days} x={at(days)} y="13" text-anchor="middle">
          {name}
        </text>
      ))}
    </svg>
  );
}
