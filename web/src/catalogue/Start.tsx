import { useEffect } from 'preact/hooks';
import type { CatalogueList } from '../api/contract.ts';
import { catalogueAddress } from './catalogueAddress.ts';
import { HalfLifeStrip, Scale } from './HalfLifeStrip.tsx';
import { MarkKey } from './Mark.tsx';

const many = (count: number) => count.toLocaleString('en-US');

/** The catalogue's beginning: what it holds, and every active by its half-life. */
export function Start({ list }: { list: CatalogueList | null }) {
  useEffect(() => {
    document.title = 'Catalogue · Drywake';
  }, []);
  const rows = list?.actives.reduce((sum, { intervalRows }) => sum + intervalRows, 0) ?? 0;
  const seen = list?.actives.reduce((sum, { rowsSeen }) => sum + rowsSeen, 0) ?? 0;
  const byHalfLife = list?.actives.toSorted(
    (a, b) =>
      (a.halfLifeDays ?? Number.MAX_VALUE) - (b.halfLifeDays ?? Number.MAX_VALUE) || a.group - b.group,
  );
  return (
    <>
      <h1 class="place-title">Catalogue</h1>
      <p class="lede">
        {list
          ? `${list.actives.length} actives before ${list.crops.length} crops: ${many(rows)} interval rows, ${many(seen)} of them read in their source, the others recalled and marked so. Your own label governs; it is the law.`
          : 'Reading the catalogue…'}
      </p>
      {byHalfLife && (
        <>
          <MarkKey />
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
          <section class="table-scroll" tabIndex={0} aria-label="Actives by half-life">
            <table class="actives">
              <caption>From the shortest half-life to the longest</caption>
              <thead>
                <tr>
                  <th scope="col">Active</th>
                  <th scope="col" class="number">
                    Group
                  </th>
                  <th scope="col" class="number">
                    Half-life, days
                  </th>
                  <th scope="col" class="strip-head">
                    <span class="unseen">On a scale from days to years</span>
                    <Scale />
                  </th>
                  <th scope="col" class="number">
                    Interval rows
                  </th>
                  <th scope="col" class="number">
                    of these seen
                  </th>
                </tr>
              </thead>
              <tbody>
                {byHalfLife.map(({ name, group, halfLifeDays, halfLifeMark, intervalRows, rowsSeen }) => (
                  <tr key={name}>
                    <th scope="row">
                      <a href={catalogueAddress({ active: name })}>{name}</a>
                    </th>
                    <td class="number">{group}</td>
                    <td class="number">
                      {halfLifeDays === null ? 'none held' : Number(halfLifeDays.toPrecision(3))}
                    </td>
                    <td class="strip-cell">
                      {halfLifeDays !== null && halfLifeMark !== null && (
                        <>
                          <span class="unseen">{halfLifeMark}</span>
                          <HalfLifeStrip typicalDays={halfLifeDays} mark={halfLifeMark} />
                        </>
                      )}
                    </td>
                    <td class="number">{intervalRows}</td>
                    <td class="number">{rowsSeen}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        </>
      )}
    </>
  );
}
