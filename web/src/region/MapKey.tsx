import { ODDS_WORDS } from '../../../src/chart/oddsScale.ts';
import { outline } from './mapMarks.ts';
import type { MarkShape, Measure } from './measures.ts';

interface MapKeyProps {
  readonly show: Measure;
  /** Whether the completeness of records is drawn. */
  readonly arcs: boolean;
  /** Stations without a place on the map. */
  readonly off: number;
}

/** How to read the marks. */
export function MapKey({ show, arcs, off }: MapKeyProps) {
  return (
    <div class="legend map-legend">
      {(show === 'now' || show === 'normal') && (
        <>
          <svg class="map-scale" viewBox="0 0 126 14" width="126" height="14" aria-hidden="true">
            {ODDS_WORDS.map((word, step) => (
              <rect
                key={word}
                x={18 * step + 0.5}
                y="0.5"
                width="17"
                height="13"
                fill={`var(--odds-${step})`}
                stroke="var(--edge)"
              />
            ))}
          </svg>
          <span>
            {ODDS_WORDS[0]} to {ODDS_WORDS[ODDS_WORDS.length - 1]}, larger for more
          </span>
          <Sign shape="circle" words="within your limit" fill="var(--odds-1)" />
          <Sign shape="diamond" words="over it" fill="var(--odds-4)" />
        </>
      )}
      {show === 'short' && (
        <Sign
          shape="circle"
          words="the larger, the more years in which the odds were over your limit on the label date"
          fill="var(--soft-ink)"
        />
      )}
      {(show === 'summer' || show === 'warm') && (
        <>
          <Sign shape="triangle" words="under 75 % of normal" fill="var(--dry)" />
          <Sign shape="ring" words="75 to 125 %" fill="none" />
          <Sign shape="square" words="over 125 %" fill="var(--wet)" />
        </>
      )}
      <Sign shape="hatched" words="too few years, or no answer" fill="url(#hatch)" />
      <Sign shape="cross" words="no number for this" fill="none" />
      {arcs && <span>arc around a mark: days with rain read, a full ring for all</span>}
      {off > 0 && (
        <span data-testid="off-map">
          {off.toLocaleString('en-US')} {off === 1 ? 'station is' : 'stations are'} in the table only
        </span>
      )}
    </div>
  );
}

function Sign({ shape, words, fill }: { shape: MarkShape; words: string; fill: string }) {
  return (
    <span class="map-sign">
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <path
          d={outline(shape, 8, 8, shape === 'cross' ? 4 : 5)}
          fill={fill}
          stroke="var(--ink)"
          stroke-width="1.2"
        />
      </svg>
      {words}
    </span>
  );
}
