import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { ActiveView, IntervalRowView } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { useQuestionLink } from '../shell/useQuestionLink.ts';
import type { Units } from '../units/units.ts';
import { asking, useWording } from '../units/useDates.ts';
import { CountrySwitch } from './CountrySwitch.tsx';
import { type CatalogueAddress, catalogueAddress } from './catalogueAddress.ts';
import { IntervalRows } from './IntervalRows.tsx';
import { MarkKey } from './Mark.tsx';
import { SourceList } from './Sources.tsx';

interface PairPageProps {
  readonly at: CatalogueAddress & { readonly active: string; readonly crop: string };
  readonly units: Units;
}

/** One active before one crop: the interval that an answer would take, and every row behind it. */
export function PairPage({ at, units }: PairPageProps) {
  const { active, crop, country } = at;
  const {
    data: view,
    problem,
    gone,
    reload,
  } = useFetched<ActiveView>(
    asking(
      `/api/catalogue/${encodeURIComponent(active)}?${new URLSearchParams({ crop, country })}`,
      useWording(),
    ),
  );
  const names = view ? { active: view.name, crop: view.crops[0].crop } : { active, crop };
  useEffect(() => {
    document.title = `${names.crop} after ${names.active} · Catalogue · Drywake`;
  }, [names.crop, names.active]);
  return (
    <>
      <p class="field-line">
        <a href={catalogueAddress({ active, country })}>{names.active}</a>, then{' '}
        <a href={catalogueAddress({ crop, country })}>{names.crop}</a>
      </p>
      <h1 class="place-title" key="title">
        {names.crop} after {names.active}
      </h1>
      {problem && <ProblemNote problem={problem} />}
      {gone && <GoneNote retry={reload} />}
      {view && <PairBody view={view} at={at} units={units} />}
    </>
  );
}

function PairBody({ view, at, units }: { view: ActiveView } & PairPageProps) {
  const ask = useQuestionLink(units);
  const [pair] = view.crops;
  const { interval } = pair;
  const question = { residual: view.name, crop: pair.crop, country: at.country };
  const isOwn = ({ kind, country }: IntervalRowView) => kind === 'label' && country === view.country;
  const isNear = ({ kind, country }: IntervalRowView) =>
    kind !== 'label' && (country === 'US' || country === 'CA');
  const own = view.rows.filter(isOwn);
  const findings = view.rows.filter((row) => !isOwn(row) && isNear(row));
  const elsewhere = view.rows.filter((row) => !isOwn(row) && !isNear(row));
  return (
    <>
      <p class="lede" data-testid="pair-interval">
        {interval === null
          ? 'No label interval is known here: read your label.'
          : `An answer takes ${interval}${pair.fromMemory ? ', from memory' : ''}, until you enter what your own label says.`}
      </p>
      <p class="do-row">
        {interval !== null && (
          <a class="button" href={ask({ ...question, interval })} data-testid="label-says">
            My label says {interval}
          </a>
        )}
        <a href={ask({ ...question, interval: undefined })}>Ask about this crop</a>
      </p>
      {[
        pair.fallBack,
        pair.disagreement,
        pair.bioassay ? 'A field bioassay is asked for.' : null,
        ...(pair.beside ?? []),
      ]
        .filter((note) => note !== null)
        .map((note) => (
          <p key={note} class="pair-note">
            {note}
          </p>
        ))}
      <div class="section-head">
        <h2>Rows behind it</h2>
        <CountrySwitch at={at} />
      </div>
      {view.rows.length === 0 && <p>No source here speaks of this pair.</p>}
      <IntervalRows title="Labels of this country" rows={own} />
      <IntervalRows title="Field findings and advice, which set no date" rows={findings} />
      <IntervalRows title="From elsewhere, which sets no date" rows={elsewhere} />
      <MarkKey />
      <SourceList sources={view.sources} />
    </>
  );
}
