/** File names of the catalogue, in its data folder. */
export const CATALOGUE_FILES = {
  actives: 'actives.csv',
  phResponses: 'ph-responses.yaml',
  crops: 'crops.csv',
  cropGroups: 'crop-groups.csv',
  intervals: 'intervals.csv',
  clauses: 'clauses.yaml',
  countingWindows: 'counting-windows.csv',
  bioassay: 'bioassay.yaml',
  sources: 'sources.csv',
} as const;

/** Text of each of those files. */
export type CatalogueTexts = Readonly<Record<keyof typeof CATALOGUE_FILES, string>>;
