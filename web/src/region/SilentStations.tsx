import type { RegionRow } from '../api/contract.ts';

/** Stations named for each reason; the files name all. */
const NAMED = 12;

const REASONS: Readonly<Record<string, string>> = {
  TOO_FEW_YEARS: 'Too few usable years',
  TEMPERATURES_MISSING: 'No temperatures, and no station near enough to lend them',
  LATITUDE_MISSING: 'The record does not say where the station lies',
};

/** Stations that cannot answer, by reason. */
export function SilentStations({ rows }: { rows: readonly RegionRow[] }) {
  const by = new Map<string, RegionRow[]>();
  for (const row of rows) {
    if (row.code === null) continue;
    by.set(row.code, [...(by.get(row.code) ?? []), row]);
  }
  if (by.size === 0) return null;
  return (
    <section class="silent" aria-labelledby="silent-title" data-testid="silent">
      <h2 id="silent-title">No answer there</h2>
      <dl>
        {[...by].map(([code, silent]) => (
          <div key={code}>
            <dt>
              {REASONS[code] ?? silent[0].reason} ({silent.length.toLocaleString('en-US')})
            </dt>
            <dd>
              {silent
                .slice(0, NAMED)
                .map(({ name }) => name)
                .join(', ')}
              {silent.length > NAMED && ` and ${(silent.length - NAMED).toLocaleString('en-US')} more`}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
