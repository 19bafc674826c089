import { useMemo, useState } from 'preact/hooks';
import { yearsFinding } from '../../../src/chart/findings.ts';
import { PAGE_TOKENS } from '../../../src/chart/theme.ts';
import { driestYear, yearScatter } from '../../../src/chart/yearScatter.ts';
import { twentieths } from '../answer/oddsInWords.ts';
import { ThirdMark } from '../answer/ThirdMark.tsx';
import type { Answer } from '../api/contract.ts';
import { rainNumber, rainUnit, rainValue, type Units } from '../units/units.ts';
import { Chart } from './Chart.tsx';
import { ChartFigure } from './ChartFigure.tsx';
import { fileStem } from './fileStem.ts';
import { useWidth } from './useWidth.ts';

interface YearsChartProps {
  readonly answer: Answer;
  readonly units: Units;
  readonly picked: number | null;
  readonly pick: (year: number | null) => void;
}

/** Every past year as its odds against its warm rain; one of them can be followed through the season. */
export function YearsChart({ answer, units, picked, pick }: YearsChartProps) {
  const { element, width } = useWidth<HTMLDivElement>();
  const { years, inputs } = answer;
  const [over, setOver] = useState<number | null>(null);
  const caption = yearsFinding(answer);
  const { oddsLimit } = inputs.question;
  const spec = useMemo(
    () =>
      yearScatter(years, {
        tokens: PAGE_TOKENS,
        description: caption,
        widthPx: Math.max(width, 280),
        rainUnit: rainUnit(units),
        rainIn: (mm) => rainValue(mm, units),
        oddsLimit,
        picked,
      }),
    [years, caption, width, units, oddsLimit, picked],
  );
  const driest = driestYear(years)?.year;
  return (
    <div ref={element}>
      {width > 0 && (
        <ChartFigure
          testId="years"
          caption={caption}
          legend={[
            ...(['dry', 'middle', 'wet'] as const).map((third) => (
              <span key={third} class="key">
                <ThirdMark third={third} /> {third}
              </span>
            )),
            <span key="limit" class="key key-limit">
              your limit
            </span>,
          ]}
          columns={[
            { head: 'Year', cell: ({ year }) => year, number: true },
            { head: 'Third', cell: ({ third }) => third },
            {
              head: `Warm rain, ${rainUnit(units)}`,
              cell: ({ warmRainMm }) => rainNumber(warmRainMm, units),
              number: true,
            },
            { head: 'Breakdown days', cell: ({ breakdownDays }) => breakdownDays.toFixed(1), number: true },
            { head: 'Odds, in 20', cell: ({ probability }) => twentieths(probability), number: true },
            { head: 'Clear date', cell: ({ clearDate }) => clearDate ?? 'none', dates: 'day' },
            { head: 'Weight', cell: ({ weight }) => Number(weight.toPrecision(3)), number: true },
          ]}
          rows={years}
          pointed={years.find(({ year }) => year === (over ?? picked)) ?? null}
          fileName={`${fileStem(answer)}-years.csv`}
        >
          <Chart
            spec={spec}
            onPoint={(row) => setOver((row as { year?: number } | null)?.year ?? null)}
            onPick={(row) => {
              const year = (row as { year?: number }).year;
              if (year !== undefined) pick(year === picked ? null : year);
            }}
          />
          <label class="pick">
            Follow one year
            <select
              value={picked ?? ''}
              onChange={({ currentTarget }) =>
                pick(currentTarget.value === '' ? null : Number(currentTarget.value))
              }
            >
              <option value="">none</option>
              {years.map(({ year }) => (
                <option key={year} value={year}>
                  {year}
                  {year === driest ? ' (driest)' : ''}
                </option>
              ))}
            </select>
          </label>
        </ChartFigure>
      )}
    </div>
  );
}
