import { GoneNote, ProblemNote } from '../answer/ProblemNote.tsx';
import type { CatalogueList } from '../api/contract.ts';
import { useFetched } from '../api/useFetched.ts';
import { useLocation } from '../shell/places.ts';
import { useUnits } from '../units/useUnits.ts';
import { ActivePage } from './ActivePage.tsx';
import { CropPage } from './CropPage.tsx';
import { readCatalogueAddress } from './catalogueAddress.ts';
import { Index } from './Index.tsx';
import { PairPage } from './PairPage.tsx';
import { Start } from './Start.tsx';
import '../style/catalogue.css';

/** The catalogue: an index in the margin; on the page its beginning, one active, one crop, or one before the other. */
export function CataloguePlace() {
  const { path, search } = useLocation();
  const units = useUnits();
  const at = readCatalogueAddress(path, search);
  const { data: list, problem, gone, reload } = useFetched<CatalogueList>('/api/catalogue');
  const { active, crop } = at;
  return (
    <div class="desk catalogue" data-chosen={active !== null || crop !== null ? '' : undefined}>
      <aside class="margin" aria-label="Index of the catalogue">
        {list && <Index list={list} at={at} />}
      </aside>
      <main class="page">
        {gone && <GoneNote retry={reload} />}
        {problem && <ProblemNote problem={problem} />}
        {active !== null && crop !== null ? (
          <PairPage at={{ ...at, active, crop }} units={units} />
        ) : active !== null ? (
          <ActivePage at={{ ...at, active }} />
        ) : crop !== null ? (
          <CropPage at={{ ...at, crop }} />
        ) : (
          <Start list={list} />
        )}
      </main>
    </div>
  );
}
