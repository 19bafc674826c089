import { useMemo, useRef } from 'preact/hooks';
import type { StationExtent } from '../../api/contract.ts';
import { graticule, MAP_BOX, onMap, placeAt } from './albers.ts';
import { useOutlines } from './useOutlines.ts';

interface Point {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

interface StationMapProps {
  readonly stations: readonly StationExtent[];
  /** The place stations are looked for around. */
  readonly point: Point | null;
  /** The station that is suggested for it. */
  readonly suggested: StationExtent | null;
  readonly choose: (point: Point, entry: 'push' | 'replace') => void;
}

/** Middle of the lower states, where the point starts. [°] */
const START: Point = { latitudeDeg: 45, longitudeDeg: -105 };
/** Steps of the arrow keys, with and without Shift. [°] */
const STEP = 0.5;
const SMALL_STEP = 0.1;
const ARROWS: Readonly<Record<string, readonly [north: number, east: number]>> = {
  ArrowUp: [1, 0],
  ArrowDown: [-1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};
const GRID = graticule();
const NATURAL = { north: 75, south: 15, west: -180, east: -50 };

const within = (value: number, low: number, high: number) => Math.max(low, Math.min(high, value));
const rounded = (degrees: number) => Math.round(degrees * 100) / 100;

/** Where the stations lie; a tap, a click or the arrow keys set the place of the field. */
export function StationMap({ stations, point, suggested, choose }: StationMapProps) {
  const svg = useRef<SVGSVGElement>(null);
  const outlines = useOutlines();
  const marks = useMemo(() => marksOf(stations), [stations]);
  const at = point && onMap(point.latitudeDeg, point.longitudeDeg);
  const to =
    suggested?.latitudeDeg != null && suggested.longitudeDeg != null
      ? onMap(suggested.latitudeDeg, suggested.longitudeDeg)
      : null;

  function tap(event: MouseEvent): void {
    const matrix = svg.current?.getScreenCTM();
    if (!matrix) return;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const { latitudeDeg, longitudeDeg } = placeAt([x, y]);
    choose({ latitudeDeg: rounded(latitudeDeg), longitudeDeg: rounded(longitudeDeg) }, 'push');
  }

  function key(event: KeyboardEvent): void {
    const arrow = ARROWS[event.key];
    if (arrow === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const step = event.shiftKey ? SMALL_STEP : STEP;
    const from = point ?? START;
    choose(
      {
        latitudeDeg: rounded(within(from.latitudeDeg + arrow[0] * step, NATURAL.south, NATURAL.north)),
        longitudeDeg: rounded(within(from.longitudeDeg + arrow[1] * step, NATURAL.west, NATURAL.east)),
      },
      'replace',
    );
  }

  const { left, top, width, height } = MAP_BOX;
  return (
    <figure class="map">
      <div
        class="map-frame"
        role="application"
        aria-label="Map of stations. Arrow keys move the place of the field by half a degree, with Shift by a tenth."
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys of its own
        tabIndex={0}
        data-testid="map"
        onClick={tap}
        onKeyDown={key}
      >
        <svg ref={svg} viewBox={`${left} ${top} ${width} ${height}`} aria-hidden="true">
          <path class="map-grid" d={GRID} />
          {outlines && (
            <>
              <path class="map-land" d={outlines.land} />
              <path class="map-borders" d={outlines.borders} />
            </>
          )}
          <path class="map-short" d={marks.short} />
          <path class="map-long" d={marks.long} />
          {at && to && <path class="map-thread" d={`M${at[0]},${at[1]}L${to[0]},${to[1]}`} />}
          {to && <circle class="map-suggested" cx={to[0]} cy={to[1]} r="11" />}
          {at && <path class="map-cross" d={`M${at[0] - 15},${at[1]}h30M${at[0]},${at[1] - 15}v30`} />}
        </svg>
      </div>
      <figcaption class="legend">
        <span class="map-key map-key-long">thirty years of rain or more</span>
        <span class="map-key map-key-short">fewer</span>
        {point && <span class="map-key map-key-cross">your place</span>}
        {suggested && <span class="map-key map-key-suggested">suggested</span>}
        {marks.off > 0 && (
          <span>
            {marks.off.toLocaleString('en-US')} {marks.off === 1 ? 'station is' : 'stations are'} not on the
            map
          </span>
        )}
      </figcaption>
    </figure>
  );
}

const THIRTY_YEARS_DAYS = 30 * 365.25;

/** All stations as two paths of dots, so that thousands of them draw as one; those whose place is not known are counted. */
function marksOf(stations: readonly StationExtent[]): { long: string; short: string; off: number } {
  const marks = { long: '', short: '', off: 0 };
  for (const { latitudeDeg, longitudeDeg, rainDays, invented } of stations) {
    if (invented) continue;
    const at = latitudeDeg === null || longitudeDeg === null ? null : onMap(latitudeDeg, longitudeDeg);
    if (at === null) marks.off++;
    else
      marks[rainDays >= THIRTY_YEARS_DAYS ? 'long' : 'short'] += `M${at[0].toFixed(1)},${at[1].toFixed(1)}h0`;
  }
  return marks;
}
