import { useMemo, useState } from 'preact/hooks';
import {
  completenessGrid,
  completenessRows,
  type GridElement,
  type GridRow,
} from '../../../src/chart/completenessGrid.ts';
import { PAGE_TOKENS } from '../../../src/chart/theme.ts';
import type { StationCheck } from '../api/contract.ts';
import { Chart } from '../charts/Chart.tsx';
import { ChartFigure } from '../charts/ChartFigure.tsx';
import { useWidth } from '../charts/useWidth.ts';
import { Switch } from '../shell/Switch.tsx';
import { useDates } from '../units/useDates.ts';
import { stationStem } from './stationStem.ts';
import { sayCompleteness } from './stationWords.ts';

const NAMES: Record<GridElement, string> = { rain: 'Rain', temperatures: 'Temperatures' };
/** Room beside the months. [px] */
const SIDES_PX = 70 + 16;
const WIDEST_PX = 640;
/** The grid is about so tall, its rows not lower and not higher than this. [px] */
const TALL_PX = 600;
const LEAST_ROW_PX = 5;
const MOST_ROW_PX = 16;

/** Years down, months across: where the record is whole, where it stands, and where it does not. */
export function CompletenessChart({ check }: { check: StationCheck }) {
  const { style: dateStyle } = useDates();
  const { element: room, width } = useWidth<HTMLDivElement>();
  const [element, setElement] = useState<GridElement>('rain');
  const [over, setOver] = useState<GridRow | null>(null);
  const { completeness } = check;
  const rows = useMemo(() => completenessRows(completeness, element), [completeness, element]);
  const caption = sayCompleteness(check, element);
  const spec = useMemo(
    () =>
      completenessGrid(rows, {
        tokens: PAGE_TOKENS,
        dateStyle,
        description: caption,
        widthPx: Math.min(width, WIDEST_PX) - SIDES_PX,
        rowPx: Math.max(LEAST_ROW_PX, Math.min(MOST_ROW_PX, TALL_PX / completeness.length)),
      }),
    [rows, caption, width, completeness.length, dateStyle],
  );
  return (
    <div ref={room}>
      {width > 0 && (
        <ChartFigure
          testId="completeness"
          caption={caption}
          legend={
            <>
              <Switch
                legend="Element"
                choices={['rain', 'temperatures']}
                chosen={element}
                choose={setElement}
              >
                {(name) => NAMES[name]}
              </Switch>
              <span class="key key-standing">stands</span>
              <span class="key key-failing">does not: too many days are missing</span>
              <span>blank: nothing</span>
            </>
          }
          columns={[
            { head: 'Year', cell: ({ year }) => year, number: true },
            { head: 'Month', cell: ({ month }) => month, number: true },
            { head: 'Days there', cell: ({ daysPresent }) => daysPresent, number: true },
            { head: 'Days of the month', cell: ({ days }) => days, number: true },
            { head: element === 'rain' ? 'Total' : 'Mean', cell: ({ state }) => state },
          ]}
          rows={rows}
          pointed={rows.find(({ year, month }) => year === over?.year && month === over.month) ?? null}
          fileName={`${stationStem(check)}-completeness-${element}.csv`}
        >
          <Chart spec={spec} onPoint={(row) => setOver(row as GridRow | null)} />
        </ChartFigure>
      )}
    </div>
  );
}
