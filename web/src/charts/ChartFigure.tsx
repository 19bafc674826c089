import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { Column } from './csv.ts';
import { drawnSvg } from './drawnSvg.ts';
import { PlainTable } from './PlainTable.tsx';
import { Readout } from './Readout.tsx';
import { saveSvg, saveTable } from './saveFile.ts';
import { type DrawnPlace, usePointedPlace } from './usePointedPlace.ts';

interface ChartFigureProps<Row> {
  readonly testId: string;
  /** What the chart shows, as a finding. */
  readonly caption: string;
  /** How to read it: signs and lines. */
  readonly legend?: ComponentChildren;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly fileName: string;
  /** The row at a place of the drawing, whose numbers are given there; or the row itself, where a mark tells it. */
  readonly rowAt?: (place: DrawnPlace) => Row | null;
  readonly pointed?: Row | null;
  /** More buttons beside those for table and file. */
  readonly tools?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A chart with its finding, its table one tap away and its rows as a file. */
export function ChartFigure<Row>(props: ChartFigureProps<Row>) {
  const { testId, caption, legend, columns, rows, fileName, rowAt, pointed = null, tools, children } = props;
  const [open, setOpen] = useState(false);
  const figure = useRef<HTMLElement>(null);
  const { place, handlers } = usePointedPlace();
  const row = place !== null && rowAt ? rowAt(place) : pointed;
  const saveDrawing = () => {
    const drawn = figure.current?.querySelector<SVGSVGElement>('.drawing svg');
    if (drawn) saveSvg(fileName.replace(/\.csv$/, '.svg'), drawnSvg(drawn), caption);
  };
  return (
    <figure class="chart" ref={figure} data-testid={testId} {...(rowAt && handlers)}>
      <figcaption>{caption}</figcaption>
      {legend && <div class="legend">{legend}</div>}
      {children}
      <div class="chart-tools">
        <button type="button" class="quiet" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? 'Hide the table' : 'As a table'}
        </button>
        <button
          type="button"
          class="quiet"
          aria-label={`Save the rows of this chart as CSV: ${caption}`}
          onClick={() => saveTable(fileName, columns, rows)}
        >
          CSV
        </button>
        {tools ?? (
          <button
            type="button"
            class="quiet"
            aria-label={`Save the drawing of this chart as SVG: ${caption}`}
            onClick={saveDrawing}
          >
            SVG
          </button>
        )}
        <Readout columns={columns} row={row} />
      </div>
      {open && <PlainTable label={`Table: ${caption}`} columns={columns} rows={rows} />}
    </figure>
  );
}
