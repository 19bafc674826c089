import type { ComponentType } from 'preact';
import { askEarly } from '../api/askedEarly.ts';
import { CHOICES, EXAMPLE } from '../api/useStart.ts';
import { type PlaceName, placeOf } from './places.ts';

/** The code of each place, fetched when it is first gone to. */
export const PARTS: Readonly<Record<Exclude<PlaceName, 'nowhere'>, () => Promise<ComponentType>>> = {
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
};

/** Places that ask a question, and so need the worked example and the choices. */
const ASKING: ReadonlySet<PlaceName> = new Set(['field', 'compare', 'crops', 'region']);
/** Places that draw charts as soon as their answer is there. */
const DRAWING: ReadonlySet<PlaceName> = new Set(['field', 'compare']);

/** Sends for all that the place of an address needs at once, rather than one thing after the other. */
export function sendFor(path: string): void {
  const place = placeOf(path);
  if (place === 'nowhere') return;
  if (ASKING.has(place)) askEarly([EXAMPLE, CHOICES]);
  // What fails here fails again where it is needed, and is told there.
  PARTS[place]().catch(() => undefined);
  if (DRAWING.has(place)) import('../charts/drawing.ts').catch(() => undefined);
}
