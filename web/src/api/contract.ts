export type { Answer, Problem } from '../../../src/schema/answer.ts';
export type { CropView } from '../../../src/schema/catalogueCropView.ts';
export type {
  ActiveView,
  CatalogueList,
  Figure,
  IntervalRowView,
} from '../../../src/schema/catalogueView.ts';
export type {
  Comparison,
  ComparisonInput,
  CropGrid,
  CropGridInput,
  CropRow,
  ResidualRow,
  Unjudged,
} from '../../../src/schema/comparison.ts';
export type { Choices, Example } from '../../../src/schema/example.ts';
export type { ImportEvent } from '../../../src/schema/importEvents.ts';
export type { NearestStations } from '../../../src/schema/place.ts';
export type { QuestionInput } from '../../../src/schema/question.ts';
export type { ReadOptions } from '../../../src/schema/readOptions.ts';
export type { StationCheck } from '../../../src/schema/stationCheck.ts';
export type { StationExtent } from '../../../src/schema/weather.ts';
