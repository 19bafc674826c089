import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { BioassayGuide } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { lastFieldSearch, useLocation } from '../shell/places.ts';
import { asking, useWording } from '../units/useDates.ts';
import '../style/guide.css';
import { GuideSections } from './GuideSections.tsx';
import { RecordTable } from './RecordTable.tsx';

/** How to run a field bioassay for a residual before a crop, to print and to take to the field. */
export function GuidePlace() {
  const query = new URLSearchParams(useLocation().search);
  const wording = useWording();
  const [residual, crop] = [query.get('residual'), query.get('crop')];
  const asked = residual && crop ? `/api/bioassay?${new URLSearchParams({ residual, crop })}` : null;
  const { data: guide, problem, gone, reload } = useFetched<BioassayGuide>(asked && asking(asked, wording));
  useEffect(() => {
    document.title = 'Field bioassay · Drywake';
  }, []);
  if (asked === null) {
    return (
      <main class="lone">
        <h1 class="place-title">Which residual, before which crop?</h1>
        <p>
          The link to this sheet stands in the answer{' '}
          <a href={`/${lastFieldSearch()}`}>on the field’s page</a>.
        </p>
      </main>
    );
  }
  return (
    <main class="lone guide-place">
      {gone && <GoneNote retry={reload} />}
      {problem && <ProblemNote problem={problem} />}
      {guide && (
        <>
          <div class="guide-tools">
            <button type="button" class="button" data-testid="print" onClick={() => window.print()}>
              Print
            </button>
            <a href={`/${lastFieldSearch()}`}>Back to the field</a>
          </div>
          <article class="guide" data-testid="guide">
            <h1 class="place-title">{guide.title}</h1>
            <p class="guide-brief">{guide.brief}</p>
            <p>{guide.worth}</p>
            <GuideSections guide={guide} />
            <RecordTable />
            <section class="guide-sources">
              <h2>Sources</h2>
              <ol>
                {guide.sources.map((source) => (
                  <li key={source}>{source}</li>
                ))}
              </ol>
            </section>
          </article>
        </>
      )}
    </main>
  );
}
