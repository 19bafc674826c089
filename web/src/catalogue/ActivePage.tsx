import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { ActiveView, Figure } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { CountrySwitch } from './CountrySwitch.tsx';
import { type CatalogueAddress, catalogueAddress } from './catalogueAddress.ts';
import { Differences } from './Differences.tsx';
import { Figures } from './Figures.tsx';
import { HalfLifeStrip } from './HalfLifeStrip.tsx';
import { Ladder } from './Ladder.tsx';
import { MarkKey } from './Mark.tsx';
import { SourceList } from './Sources.tsx';

interface ActivePageProps {
  readonly at: CatalogueAddress & { readonly active: string };
}

/** One active: its figures with marks and sources, and the crops by interval. */
export function ActivePage({ at }: ActivePageProps) {
  const { active, country } = at;
  const {
    data: view,
    problem,
    gone,
    reload,
  } = useFetched<ActiveView>(`/api/catalogue/${encodeURIComponent(active)}?country=${country}`);
  const name = view?.name ?? active;
  useEffect(() => {
    document.title = `${name} · Catalogue · Drywake`;
  }, [name]);
  return (
    <>
      <p class="field-line">Active ingredient{view && `, mode-of-action group ${view.group}`}</p>
      <h1 class="place-title" key="title">
        {name}
      </h1>
      {problem && <ProblemNote problem={problem} />}
      {gone && <GoneNote retry={reload} />}
      {view && <ActiveBody view={view} at={at} />}
    </>
  );
}

function ActiveBody({ view, at }: { view: ActiveView } & ActivePageProps) {
  const life = (which: string) => numberIn(view.figures, `Half-life, ${which}`);
  const typical = view.figures.find(({ name }) => name === 'Half-life, typical');
  const known = view.crops.filter(({ interval }) => interval !== null);
  return (
    <>
      <p class="lede">{sayHalfLife(life('typical'), life('shortest'), life('longest'))}</p>
      {typical && typeof typical.value === 'number' && (
        <div class="half-life-big">
          <HalfLifeStrip
            typicalDays={typical.value}
            mark={typical.mark}
            lowDays={life('shortest')}
            highDays={life('longest')}
            wide
          />
        </div>
      )}
      {view.cautions.length > 0 && (
        <section class="cautions" aria-labelledby="mind-title">
          <h2 id="mind-title">Mind</h2>
          <ul>
            {view.cautions.map((caution) => (
              <li key={caution}>{sentence(caution)}</li>
            ))}
          </ul>
        </section>
      )}
      <section class="crops" aria-labelledby="crops-title">
        <div class="section-head">
          <h2 id="crops-title">
            {known.length === 0 ? 'No interval is known before any crop' : 'Crops by interval'}
          </h2>
          <CountrySwitch at={at} />
        </div>
        <Ladder
          entries={view.crops.map(({ crop, ...same }) => ({
            ...same,
            name: crop,
            href: catalogueAddress({ ...at, crop }),
          }))}
          fallBack="not named: a line for a wider group, or for crops that the label does not name, stands in"
        />
      </section>
      <Differences
        notes={view.crops.flatMap(({ crop, disagreement }) =>
          disagreement === null ? [] : [{ crop, disagreement }],
        )}
        at={at}
      />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="table-scroll figures-room" tabIndex={0} aria-label={`Figures of ${view.name}`}>
        <Figures figures={view.figures} title="Every figure, and where it comes from" />
      </section>
      <MarkKey />
      <SourceList sources={view.sources} />
    </>
  );
}

function numberIn(figures: readonly Figure[], name: string): number | null {
  const value = figures.find((figure) => figure.name === name)?.value;
  return typeof value === 'number' ? value : null;
}

function sayHalfLife(typical: number | null, low: number | null, high: number | null): string {
  if (typical === null) return 'No half-life of it is held here: label dates and conditions only.';
  const about = `Half of it is gone in about ${Number(typical.toPrecision(3))} days in the field`;
  if (low !== null && high !== null) return `${about}; sources give ${low} to ${high}.`;
  if (high !== null) return `${about}; sources go up to ${high}.`;
  if (low !== null) return `${about}; sources go down to ${low}.`;
  return `${about}.`;
}

const sentence = (text: string): string =>
  `${text[0].toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
