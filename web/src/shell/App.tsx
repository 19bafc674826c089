import { useUnits } from '../units/useUnits.ts';
import { Foot } from './Foot.tsx';
import { Lazy } from './Lazy.tsx';
import { Masthead } from './Masthead.tsx';
import { Nowhere } from './Nowhere.tsx';
import { type PlaceName, useLocation } from './places.ts';
import { useArrival } from './useArrival.ts';
import { useLinks } from './useLinks.ts';
import { useUnitsInAddress } from './useUnitsInAddress.ts';

const PARTS = {
  field: async () => (await import('./FieldPart.tsx')).FieldPart,
  compare: async () => (await import('../compare/ComparePart.tsx')).ComparePart,
  crops: async () => (await import('../crops/CropsPart.tsx')).CropsPart,
  sheet: async () => (await import('../handout/HandoutPlace.tsx')).HandoutPlace,
  bioassay: async () => (await import('../bioassay/GuidePlace.tsx')).GuidePlace,
  fields: async () => (await import('../fields/FieldsPlace.tsx')).FieldsPlace,
  region: async () => (await import('../region/RegionPart.tsx')).RegionPart,
  labels: async () => (await import('../labels/LabelsPlace.tsx')).LabelsPlace,
  weather: async () => (await import('../weather/WeatherPlace.tsx')).WeatherPlace,
  catalogue: async () => (await import('../catalogue/CataloguePlace.tsx')).CataloguePlace,
} satisfies Partial<Record<PlaceName, unknown>>;

/** The page: masthead, and the place that the address names. */
export function App() {
  const here = useLocation();
  const { place, path, search } = here;
  const units = useUnits();
  const chosen = place === 'weather' ? new URLSearchParams(search).get('station') : null;
  useLinks();
  useUnitsInAddress(units, here);
  useArrival(`${path}:${chosen}`);
  return (
    <>
      <Masthead units={units} place={place} />
      {place === 'nowhere' ? <Nowhere path={path} /> : <Lazy key={place} load={PARTS[place]} />}
      {place !== 'sheet' && <Foot />}
    </>
  );
}
