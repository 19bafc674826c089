import { useMemo } from 'preact/hooks';
import { recentMonthAt, recentMonths } from '../../../src/chart/recentMonths.ts';
import { PAGE_TOKENS } from '../../../src/chart/theme.ts';
import type { StationCheck } from '../api/contract.ts';
import { Chart } from '../charts/Chart.tsx';
import { ChartFigure } from '../charts/ChartFigure.tsx';
import { useWidth } from '../charts/useWidth.ts';
import { rainNumber, rainUnit, rainValue, type Units } from '../units/units.ts';
import { useDates } from '../units/useDates.ts';
import { stationStem } from './stationStem.ts';
import { sayRecent } from './stationWords.ts';

interface RecentChartProps {
  readonly check: StationCheck;
  readonly recent: NonNullable<StationCheck['recent']>;
  readonly units: Units;
}

const WIDEST_PX = 720;

/** Rain of the last twelve whole months against their normals. */
export function RecentChart({ check, recent, units }: RecentChartProps) {
  const dates = useDates();
  const { element, width } = useWidth<HTMLDivElement>();
  const caption = sayRecent(recent, units);
  const { baseFrom, baseTo } = check.normals;
  const spec = useMemo(
    () =>
      recentMonths(recent.months, {
        tokens: PAGE_TOKENS,
        description: caption,
        widthPx: Math.min(width, WIDEST_PX),
        dateStyle: dates.style,
        rainUnit: rainUnit(units),
        rainIn: (mm) => rainValue(mm, units),
      }),
    [recent, caption, width, units, dates],
  );
  const rain = (mm: number | null) => (mm === null ? null : rainNumber(mm, units));
  return (
    <div ref={element}>
      {width > 0 && (
        <ChartFigure
          testId="recent"
          caption={caption}
          legend={
            <>
              <span class="key key-observed">fell</span>
              <span class="key key-normal">
                normal, mean of {baseFrom} to {baseTo}
              </span>
              <span>percent: one over the other</span>
            </>
          }
          columns={[
            { head: 'Month', cell: ({ month }) => month, dates: 'month' },
            { head: `Rain, ${rainUnit(units)}`, cell: ({ rainMm }) => rain(rainMm), number: true },
            { head: `Normal, ${rainUnit(units)}`, cell: ({ normalMm }) => rain(normalMm), number: true },
            {
              head: 'Percent of normal',
              cell: ({ percentOfNormal }) => (percentOfNormal === null ? null : Math.round(percentOfNormal)),
              number: true,
            },
            { head: 'Days missing', cell: ({ missingDays }) => missingDays, number: true },
          ]}
          rows={recent.months}
          rowAt={({ x }) => recentMonthAt(recent.months, x, Math.min(width, WIDEST_PX))}
          fileName={`${stationStem(check)}-last-twelve-months.csv`}
        >
          <Chart spec={spec} />
        </ChartFigure>
      )}
    </div>
  );
}
