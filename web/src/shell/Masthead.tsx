import { DatesSwitch } from '../units/DatesSwitch.tsx';
import { UnitsSwitch } from '../units/UnitsSwitch.tsx';
import type { Units } from '../units/units.ts';
import { switchUnits } from '../units/useUnits.ts';
import { type PlaceName, useLastField } from './places.ts';

const PLACES = [
  { name: 'field', title: 'The question' },
  { name: 'compare', title: 'Side by side' },
  { name: 'crops', title: 'Crop by date' },
  { name: 'fields', title: 'Fields' },
  { name: 'region', title: 'Region' },
  { name: 'weather', title: 'Weather' },
  { name: 'catalogue', title: 'Catalogue' },
] as const;

/** Name, the places, and how amounts and dates are written. */
export function Masthead({ units, place }: { units: Units; place: PlaceName }) {
  const asked = useLastField();
  const href = {
    field: `/${asked}`,
    compare: `/compare${asked}`,
    crops: `/crops${asked}`,
    fields: '/fields',
    region: `/region${asked}`,
    weather: '/weather',
    catalogue: '/catalogue',
  };
  return (
    <header class="masthead">
      <a class="name" href={place === 'field' ? '/' : href.field}>
        <svg viewBox="0 0 34 22" width="34" height="22" aria-hidden="true">
          <g fill="none" stroke="currentColor" stroke-linecap="round" stroke-width="2">
            <path d="M2 3c9 0 12 4 17 7.500" />
            <path d="M2 19c9 0 12-4 17-7.500" />
            <path d="M2 11h9" />
          </g>
          <circle cx="27" cy="11" r="4.500" fill="currentColor" />
        </svg>
        Drywake
      </a>
      <nav class="places" aria-label="Places">
        {PLACES.map(({ name, title }) => (
          <a key={name} href={href[name]} aria-current={place === name ? 'page' : undefined}>
            {title}
          </a>
        ))}
      </nav>
      <div class="switches">
        <UnitsSwitch units={units} onChange={switchUnits} />
        <DatesSwitch />
      </div>
    </header>
  );
}
