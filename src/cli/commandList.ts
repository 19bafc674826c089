import type { CommandSpec } from './command.ts';

/** All commands, in the order of the help. */
export const COMMANDS: readonly CommandSpec[] = [
  {
    name: 'odds',
    summary: 'odds, dates and reasons for one field, treatment, crop and planting date',
    load: () => import('./commands/odds.ts'),
  },
  {
    name: 'compare',
    summary: 'residuals side by side before one crop and date: odds against weeks of weed control',
    load: () => import('./commands/compare.ts'),
  },
  {
    name: 'crops',
    summary: 'which crops can go in when, after one treatment',
    load: () => import('./commands/crops.ts'),
  },
  {
    name: 'fields',
    summary: 'the fields that are kept: list, show, CSV in and out, backup, undo, federal record',
    load: () => import('./commands/fields.ts'),
  },
  {
    name: 'labels',
    summary: 'your own label entries: list, show, CSV in and out',
    load: () => import('./commands/labels.ts'),
  },
  {
    name: 'refresh',
    summary: 'answer all fields again and tell what has changed, largest first',
    load: () => import('./commands/refresh.ts'),
  },
  {
    name: 'sheet',
    summary: 'one page for the grower and the file, once the interval is confirmed',
    load: () => import('./commands/sheet.ts'),
  },
  {
    name: 'bioassay',
    summary: 'how to run and read a field bioassay, and which species to sow',
    load: () => import('./commands/bioassay.ts'),
  },
  {
    name: 'batch',
    summary: 'a whole list of fields from a CSV file, ranked by odds and area',
    load: () => import('./commands/batch.ts'),
  },
  {
    name: 'region',
    summary: 'one treatment, crop and date over all stations, or those of some states or a box',
    load: () => import('./commands/region.ts'),
  },
  {
    name: 'hindcast',
    summary: 'were the odds honest in past years? each one left out and held against its own weather',
    load: () => import('./commands/hindcast.ts'),
  },
  {
    name: 'weather',
    summary: 'bring in, list and check daily weather records; normals; stations near a place',
    load: () => import('./commands/weather.ts'),
  },
  {
    name: 'catalogue',
    summary: 'actives, crops and rotation intervals, each figure with its source',
    load: () => import('./commands/catalogue.ts'),
  },
  {
    name: 'serve',
    summary: 'run the page and the programming interface on this computer',
    load: () => import('./commands/serve.ts'),
  },
];
