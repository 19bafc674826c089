import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type AnswerDeps, createFileReader } from '../src/index.ts';
import { depsOver } from './demo.ts';

/** A place that a notebook asks about. */
export interface Place {
  readonly name: string;
  readonly station: string;
  /** Where the record itself does not say it. [°] */
  readonly latitudeDeg?: number;
  readonly deps: AnswerDeps;
}

/** Real records, where they lie beside the project; they are never part of it. */
const FOLDER = fileURLToPath(new URL('../../shared/weather/', import.meta.url));
const REAL = [
  {
    station: 'USW00023066',
    file: 'derived/USW00023066.dly.gz',
    latitudeDeg: 39.134,
    name: 'Grand Junction, Colorado (dry, 222 mm a year)',
  },
  {
    station: 'USC00241044',
    file: 'derived/USC00241044.dly.gz',
    latitudeDeg: 45.662,
    name: 'Bozeman, Montana (middling)',
  },
  {
    station: 'CA006105976',
    file: 'ghcnd/CA006105976.dly.gz',
    latitudeDeg: 45.383,
    name: 'Ottawa, Ontario (humid, 880 mm a year)',
  },
];

/** The real places, the driest first; null unless all their records are at hand. */
export function realPlaces(): Place[] | null {
  const paths = REAL.map(({ file }) => `${FOLDER}${file}`);
  if (!paths.every((path) => existsSync(path))) return null;
  const deps = depsOver(createFileReader(paths));
  return REAL.map((place) => ({ ...place, deps }));
}
