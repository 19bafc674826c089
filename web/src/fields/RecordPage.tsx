import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { ApplicationRecord } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { asking, useWording } from '../units/useDates.ts';
import { fieldAddress } from './fieldsAddress.ts';

/** The record of a restricted-use application on one page, as it is printed. */
export function RecordPage({ field, treatment }: { field: string; treatment: string }) {
  const { data, problem, gone, reload } = useFetched<ApplicationRecord>(
    asking(`/api/fields/${encodeURIComponent(field)}/record/${encodeURIComponent(treatment)}`, useWording()),
  );
  useEffect(() => {
    document.title = `Application record${data === null ? '' : `, ${data.field}`} · Drywake`;
  }, [data]);
  return (
    <main class="lone fields-place record-page">
      <p class="back">
        <a href={fieldAddress(field)}>Back to the field</a>
      </p>
      {gone && <GoneNote retry={reload} />}
      {problem && <ProblemNote problem={problem} />}
      {data && (
        <article data-testid="application-record">
          <h1 class="place-title">Record of an application</h1>
          <p class="lede">{data.field}</p>
          {data.missing.length > 0 && (
            <p class="note" data-testid="record-missing">
              Still to be filled in: {data.missing.join(', ').toLowerCase()}.
            </p>
          )}
          <dl class="record-lines">
            {data.lines
              .filter(({ required, value }) => required || value !== null)
              .map(({ label, value }) => (
                <div key={label}>
                  <dt>{label}</dt>
                  <dd>{value ?? <span class="unseen">not filled in</span>}</dd>
                </div>
              ))}
          </dl>
          <ul class="small">
            {data.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
          <p class="do-row no-print">
            <button type="button" class="button" data-testid="print" onClick={() => window.print()}>
              Print the record
            </button>
          </p>
        </article>
      )}
    </main>
  );
}
