import { twentieths } from '../answer/oddsInWords.ts';
import type { Hindcast } from '../api/contract.ts';
import type { Column } from '../charts/csv.ts';
import { PlainTable } from '../charts/PlainTable.tsx';
import { saveTable } from '../charts/saveFile.ts';
import { Fold } from '../shell/Fold.tsx';
import { lookBackStem } from './lookBackWords.ts';

type Year = Hindcast['years'][number];

/** Each past year: how many of its soils would have been harmed, and what the odds had said. */
export function PastYears({ hindcast }: { hindcast: Hindcast }) {
  const { years, leads, soilsPerYear } = hindcast;
  const columns: Column<Year>[] = [
    { head: 'Sprayed in', cell: ({ year }) => year, number: true },
    { head: `Soils harmed, of ${soilsPerYear}`, cell: ({ harmed }) => harmed, number: true },
    ...leads.map(({ leadDays }, lead) => ({
      head: `Odds ${leadDays} days before, in 20`,
      cell: ({ odds }: Year) => twentieths(odds[lead]),
      number: true,
    })),
  ];
  return (
    <Fold title={`The ${years.length} years, one by one`}>
      {() => (
        <>
          <PlainTable
            label="Past years looked back on"
            columns={columns}
            rows={years}
            testId="look-back-years"
          />
          <button
            type="button"
            class="quiet"
            aria-label="Save the past years as CSV"
            onClick={() => saveTable(`${lookBackStem(hindcast)}-years.csv`, columns, years)}
          >
            CSV
          </button>
        </>
      )}
    </Fold>
  );
}
