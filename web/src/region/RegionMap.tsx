import { useMemo, useRef, useState } from 'preact/hooks';
import { keepTogether } from '../answer/oddsInWords.ts';
import type { RegionRow } from '../api/contract.ts';
import { useWidth } from '../charts/useWidth.ts';
import { graticule } from '../weather/map/albers.ts';
import { useOutlines } from '../weather/map/useOutlines.ts';
import { MapKey } from './MapKey.tsx';
import { boxAround, mapMarks, nearestTo, placeStations } from './mapMarks.ts';
import { type Measure, shareOf } from './measures.ts';

interface RegionMapProps {
  readonly rows: readonly RegionRow[];
  readonly show: Measure;
  readonly oddsLimit: number;
  /** What it shows, for those who cannot see it. */
  readonly caption: string;
  readonly picked: RegionRow | null;
  readonly pick: (station: string | null) => void;
  /** A station’s numbers, read out. */
  readonly inWords: (row: RegionRow) => string;
}

const GRID = graticule();
/** Keys that go on to the station with the next lower or higher number. */
const STEPS: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  ArrowLeft: -1,
  ArrowUp: -1,
};
/** Reach of a tap or pointer around a mark. [px] */
const REACH_PX = 24;
/** Stations up to which each record’s completeness is drawn around its mark. */
const MOST_ARCS = 1500;

/** Stations as marks over the outlines of the states; nothing is drawn between them. */
export function RegionMap(props: RegionMapProps) {
  const { rows, show, oddsLimit, caption, picked, pick, inWords } = props;
  const { element, width: widthPx } = useWidth<HTMLDivElement>();
  const svg = useRef<SVGSVGElement>(null);
  const [over, setOver] = useState<string | null>(null);
  const outlines = useOutlines();
  const { placed, off } = useMemo(() => placeStations(rows), [rows]);
  const { left, top, width, height } = useMemo(() => boxAround(placed), [placed]);
  const perPx = width / Math.max(widthPx, 280);
  const { groups, arcs } = useMemo(
    () => mapMarks(placed, show, oddsLimit, perPx),
    [placed, show, oddsLimit, perPx],
  );
  const at = (station: string | undefined) => placed.find(({ row }) => row.station === station);
  const ring = at(picked?.station);
  const hovered = over === null ? undefined : at(over);

  function stationAt(event: MouseEvent): string | null {
    const matrix = svg.current?.getScreenCTM();
    if (!matrix) return null;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return nearestTo(placed, x, y, REACH_PX * perPx)?.row.station ?? null;
  }

  function key(event: KeyboardEvent): void {
    const step = STEPS[event.key];
    if (step === undefined || event.altKey || event.ctrlKey || event.metaKey || placed.length === 0) return;
    event.preventDefault();
    const inOrder = [...placed].sort((a, b) => (shareOf(b.row, show) ?? -1) - (shareOf(a.row, show) ?? -1));
    const now = inOrder.findIndex(({ row }) => row.station === picked?.station);
    const next = now < 0 ? 0 : (now + step + inOrder.length) % inOrder.length;
    pick(inOrder[next].row.station);
  }

  return (
    <div class="region-map" ref={element}>
      <div
        class="map-frame"
        role="application"
        aria-label={`Map. ${caption} Arrow keys go from station to station. The table below has every station.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys of its own
        tabIndex={0}
        data-testid="region-map"
        onKeyDown={key}
        onClick={(event) => {
          const station = stationAt(event);
          if (station !== null) pick(station);
        }}
        onPointerMove={(event) => event.pointerType !== 'touch' && setOver(stationAt(event))}
        onPointerLeave={() => setOver(null)}
      >
        <svg ref={svg} viewBox={`${left} ${top} ${width} ${height}`} aria-hidden="true">
          <defs>
            <pattern
              id="hatch"
              width={4 * perPx}
              height={4 * perPx}
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <rect width={4 * perPx} height={4 * perPx} fill="var(--sheet)" />
              <rect width={1.5 * perPx} height={4 * perPx} fill="var(--soft-ink)" />
            </pattern>
          </defs>
          <path d={GRID} fill="none" stroke="var(--rule)" stroke-width={perPx} />
          {outlines && (
            <>
              <path d={outlines.land} fill="var(--paper)" stroke="var(--edge)" stroke-width={1.5 * perPx} />
              <path d={outlines.borders} fill="none" stroke="var(--edge)" stroke-width={0.8 * perPx} />
            </>
          )}
          {placed.length <= MOST_ARCS && (
            <path d={arcs} fill="none" stroke="var(--ink)" stroke-width={1.2 * perPx} data-kind="arcs" />
          )}
          {groups.map(({ key, shape, fill, path }) => (
            <path
              key={key}
              d={path}
              data-shape={shape}
              fill={fill}
              stroke={shape === 'cross' || shape === 'ring' ? 'var(--ink)' : 'var(--edge)'}
              stroke-width={(shape === 'ring' || shape === 'cross' ? 1.8 : 1.2) * perPx}
            />
          ))}
          {ring && (
            <circle
              cx={ring.x}
              cy={ring.y}
              r={17 * perPx}
              fill="none"
              stroke="var(--accent)"
              stroke-width={3 * perPx}
              data-kind="picked"
            />
          )}
        </svg>
        {hovered && (
          <p
            class="map-card"
            data-testid="map-card"
            data-right={(hovered.x - left) / width > 0.5 ? '' : undefined}
            data-low={(hovered.y - top) / height > 0.5 ? '' : undefined}
            style={{
              '--x': `${(100 * (hovered.x - left)) / width}%`,
              '--y': `${(100 * (hovered.y - top)) / height}%`,
            }}
          >
            {keepTogether(inWords(hovered.row))}
          </p>
        )}
      </div>
      {placed.length === 0 && (
        <p class="small" data-testid="map-empty">
          No station here has a place on the map: the invented one lies nowhere. Records come in{' '}
          <a href="/weather">under Weather</a>.
        </p>
      )}
      <MapKey show={show} arcs={placed.length > 0 && placed.length <= MOST_ARCS} off={off} />
    </div>
  );
}
