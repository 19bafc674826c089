import { useEffect, useRef, useState } from 'preact/hooks';
import { oddsStep } from '../../../src/chart/oddsScale.ts';
import { chipText } from '../answer/chipText.ts';
import { sayOdds } from '../answer/oddsInWords.ts';
import type { CropRow } from '../api/contract.ts';
import { monthName } from '../units/dates.ts';
import { useDates } from '../units/useDates.ts';
import type { Years } from './cropsAddress.ts';
import { type Cell, cellOf, columnOfDate, type GridColumn, monthSpans, moveOn } from './gridView.ts';

/** A cell by its place. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

interface CropGridTableProps {
  /** What the cells hold, for those who hear the table only. */
  readonly caption: string;
  readonly rows: readonly CropRow[];
  readonly columns: readonly GridColumn[];
  readonly years: Years;
  /** The cell of the crop and date asked about; null where it lies outside. */
  readonly ringed: Place | null;
  readonly ring: (place: Place) => void;
  /** A cell is pointed at or come to by key; null once it is left. */
  readonly point: (place: Place | null) => void;
}

/**
 * Crops down, planting dates across, a number of twenty in every cell. It scrolls within itself with the crops held
 * in place; arrow keys go from cell to cell, Enter rings one.
 */
export function CropGridTable({ caption, rows, columns, years, ringed, ring, point }: CropGridTableProps) {
  const dates = useDates();
  const [at, setAt] = useState<Place | null>(null);
  const grid = useRef<HTMLDivElement>(null);
  const tabbed = at ?? ringed ?? { row: 0, column: 0 };
  const inside = {
    row: Math.min(tabbed.row, rows.length - 1),
    column: Math.min(tabbed.column, columns.length - 1),
  };
  const ringedColumn = ringed?.column ?? null;
  useEffect(() => {
    const room = grid.current;
    const cell = room?.querySelector<HTMLElement>('[data-ringed]');
    if (!room || !cell || room.scrollWidth <= room.clientWidth) return;
    const { left, width } = cell.getBoundingClientRect();
    const box = room.getBoundingClientRect();
    room.scrollLeft += left + width / 2 - (box.left + box.width * 0.7);
  }, [ringedColumn === null]);

  function key(event: KeyboardEvent): void {
    const next = moveOn(event.key, inside, { rows: rows.length, columns: columns.length });
    if (next === null) return;
    event.preventDefault();
    setAt(next);
    grid.current
      ?.querySelector<HTMLElement>(`[data-cell="${next.row}:${next.column}"]`)
      ?.focus({ preventScroll: false });
  }

  return (
    <div class="table-scroll fixed-first" ref={grid}>
      <table class="crop-grid" data-testid="crop-grid">
        <caption class="unseen">{caption}</caption>
        <thead>
          <tr>
            <td />
            {monthSpans(columns).map(({ month, columns: span }) => (
              <th key={month} scope="colgroup" colSpan={span}>
                {span > 1 ? dates.month(month) : monthName(Number(month.slice(5)), dates.style)}
              </th>
            ))}
          </tr>
          <tr>
            <th scope="col">
              <span class="unseen">Crop</span>
            </th>
            {columns.map(({ date }, column) => (
              <th key={date} scope="col" data-own={column === ringedColumn ? '' : undefined}>
                <span class="unseen">{dates.monthDay(date)}</span>
                <span aria-hidden="true">{Number(date.slice(8))}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody
          onKeyDown={key}
          onPointerOver={({ target }) => point(placeOf(target))}
          onPointerLeave={() => point(null)}
          onFocusIn={({ target }) => point(placeOf(target))}
          onFocusOut={() => point(null)}
        >
          {rows.map((row, index) => {
            const label = columnOfDate(columns, row.labelDate);
            const clear = columnOfDate(columns, row.clearDate);
            return (
              <tr key={row.crop} data-memory={row.interval.fromMemory ? '' : undefined}>
                <th scope="row">{row.crop}</th>
                {columns.map((column, place) => (
                  <GridCell
                    key={column.date}
                    id={`${index}:${place}`}
                    cell={cellOf(row, column, years)}
                    letters={`${label === place ? 'L' : ''}${clear === place ? 'C' : ''}`}
                    ringed={ringed?.row === index && ringed.column === place}
                    tabbed={inside.row === index && inside.column === place}
                    press={() => {
                      setAt({ row: index, column: place });
                      ring({ row: index, column: place });
                    }}
                  />
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

interface GridCellProps {
  readonly id: string;
  readonly cell: Cell;
  readonly letters: string;
  readonly ringed: boolean;
  readonly tabbed: boolean;
  readonly press: () => void;
}

/** The cell that an element stands in. */
function placeOf(target: EventTarget | null): Place | null {
  const cell = (target as Element | null)?.closest('td')?.querySelector<HTMLElement>('[data-cell]');
  if (!cell?.dataset.cell) return null;
  const [row, column] = cell.dataset.cell.split(':').map(Number);
  return { row, column };
}

const SPOKEN: Readonly<Record<string, string>> = { L: ', label date', C: ', clear date' };

function GridCell({ id, cell, letters, ringed, tabbed, press }: GridCellProps) {
  return (
    <td
      data-kind={cell.kind}
      data-step={cell.kind === 'odds' ? oddsStep(cell.odds) : undefined}
      data-ringed={ringed ? '' : undefined}
    >
      <button
        type="button"
        data-cell={id}
        tabIndex={tabbed ? 0 : -1}
        aria-pressed={ringed}
        aria-label={`${inWords(cell)}${[...letters].map((letter) => SPOKEN[letter]).join('')}`}
        onClick={press}
      >
        {letters && <small>{letters}</small>}
        {cell.kind === 'odds' ? chipText(cell.odds) : cell.kind === 'free' ? '–' : ''}
      </button>
    </td>
  );
}

function inWords(cell: Cell): string {
  if (cell.kind === 'odds') return sayOdds(cell.odds);
  return cell.kind === 'free' ? 'no carryover reckoned' : 'not allowed by the label';
}
