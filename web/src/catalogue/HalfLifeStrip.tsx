import type { Figure } from '../api/contract.ts';
import { HALF_LIFE_TICKS, halfLifeShare } from './halfLifeScale.ts';

interface HalfLifeStripProps {
  readonly typicalDays: number;
  readonly mark: Figure['mark'];
  readonly lowDays?: number | null;
  readonly highDays?: number | null;
  /** Names under the marks of the scale. */
  readonly named?: boolean;
}

const WIDTH = 240;
const SIDE = 8;
const at = (days: number) => SIDE + halfLifeShare(days) * (WIDTH - 2 * SIDE);

/** A half-life on the scale from days to years, with the span of what is published. The numbers stand beside it. */
export function HalfLifeStrip({ typicalDays, mark, lowDays, highDays, named = false }: HalfLifeStripProps) {
  const x = at(typicalDays);
  const low = lowDays == null ? x : at(lowDays);
  const high = highDays == null ? x : at(highDays);
  return (
    <svg class="half-life" viewBox={`0 0 ${WIDTH} ${named ? 40 : 20}`} aria-hidden="true">
      {HALF_LIFE_TICKS.map(({ days, name }) => (
        <g key={days}>
          <path class="half-life-tick" d={`M${at(days)} 2v16`} />
          {named && (
            <text x={at(days)} y="35" text-anchor="middle">
              {name}
            </text>
          )}
        </g>
      ))}
      <path class="half-life-line" d={`M${SIDE} 10H${WIDTH - SIDE}`} />
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
