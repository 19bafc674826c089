import type { IntervalRowView } from '../api/contract.ts';
import { Mark } from './Mark.tsx';
import { SourceLinks } from './Sources.tsx';

const COUNTRIES: Record<IntervalRowView['country'], string> = {
  US: 'United States',
  CA: 'Canada',
  AU: 'Australia',
  other: 'elsewhere',
};

/** Interval rows of one kind, each as it stands in its source. */
export function IntervalRows({ title, rows }: { title: string; rows: readonly IntervalRowView[] }) {
  if (rows.length === 0) return null;
  return (
    <section class="interval-rows">
      <h3>{title}</h3>
      <ul>
        {rows.map((row) => (
          <li key={row.rowId} data-mark={row.mark}>
            <p class="row-interval">{row.interval ?? 'no length given'}</p>
            <div>
              <p>
                {row.cropOnSource}
                {row.partners.length > 0 && `, ready mix with ${row.partners.join(' and ')}`}
                {row.kind !== 'label' && `, ${row.kind}`}
              </p>
              {row.conditions.length > 0 && (
                <ul class="conditions">
                  {row.conditions.map((condition) => (
                    <li key={condition}>{condition}</li>
                  ))}
                </ul>
              )}
              {row.note && <p class="small">{row.note}</p>}
              <p class="row-from">
                <Mark mark={row.mark} /> <span>{placeOf(row)}</span> <SourceLinks ids={row.sources} />
              </p>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

function placeOf({ region, country }: IntervalRowView): string {
  const name = COUNTRIES[country];
  if (region === country || region === name) return name;
  return country === 'other' ? region : `${region}, ${name}`;
}
