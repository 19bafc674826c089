import { useUnits } from '../units/useUnits.ts';
import { Caught } from './Caught.tsx';
import { Foot } from './Foot.tsx';
import { Lazy } from './Lazy.tsx';
import { Masthead } from './Masthead.tsx';
import { Nowhere } from './Nowhere.tsx';
import { PARTS } from './parts.ts';
import { useLocation } from './places.ts';
import { useArrival } from './useArrival.ts';
import { useLinks } from './useLinks.ts';
import { useUnitsInAddress } from './useUnitsInAddress.ts';

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
      {place === 'nowhere' ? (
        <Nowhere path={path} />
      ) : (
        <Caught key={place} at={path + search}>
          <Lazy load={PARTS[place]} />
        </Caught>
      )}
      {place !== 'sheet' && <Foot />}
    </>
  );
}
