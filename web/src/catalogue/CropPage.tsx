import { useEffect } from 'preact/hooks';
import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { CropView } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { CountrySwitch } from './CountrySwitch.tsx';
import { type CatalogueAddress, catalogueAddress } from './catalogueAddress.ts';
import { Figures } from './Figures.tsx';
import { Ladder } from './Ladder.tsx';
import { MarkKey } from './Mark.tsx';
import { SourceList } from './Sources.tsx';

/** One crop: what is known of it, and the actives before it by interval. */
export function CropPage({ at }: { at: CatalogueAddress & { readonly crop: string } }) {
  const { crop, country } = at;
  const {
    data: view,
    problem,
    gone,
    reload,
  } = useFetched<CropView>(`/api/catalogue/crop/${encodeURIComponent(crop)}?country=${country}`);
  const name = view?.name ?? crop;
  useEffect(() => {
    document.title = `${name} · Catalogue · Drywake`;
  }, [name]);
  return (
    <>
      <p class="field-line">Crop{view && `, ${view.kind}`}</p>
      <h1 class="place-title" key="title">
        {name}
      </h1>
      {problem && <ProblemNote problem={problem} />}
      {gone && <GoneNote retry={reload} />}
      {view && (
        <>
          <p class="lede">
            <i>{view.botanicalName}</i>
            {view.aliases.length > 0 && `; also ${view.aliases.join(', ')}`}.
          </p>
          <section class="crops" aria-labelledby="crops-title">
            <div class="section-head">
              <h2 id="crops-title">Actives by the interval before {view.name}</h2>
              <CountrySwitch at={at} />
            </div>
            <Ladder
              entries={view.actives.map(({ active, crop: _, ...same }) => ({
                ...same,
                name: active,
                href: catalogueAddress({ ...at, active }),
              }))}
              fallBack={`${view.name} is not named: a line for a wider group, or for crops that the label does not name, stands in`}
            />
          </section>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
          <section class="table-scroll figures-room" tabIndex={0} aria-label={`About ${view.name}`}>
            <Figures figures={view.figures} title="About the crop" />
          </section>
          <MarkKey />
          <SourceList sources={view.sources} />
        </>
      )}
    </>
  );
}
