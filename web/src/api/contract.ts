export type { Alternatives } from '../../../src/schema/alternatives.ts';
export type { Answer, Problem } from '../../../src/schema/answer.ts';
export type { RestoreResult } from '../../../src/schema/backup.ts';
export type { Batch } from '../../../src/schema/batch.ts';
export type { BatchEvent } from '../../../src/schema/batchEvents.ts';
export type { BioassayGuide } from '../../../src/schema/bioassay.ts';
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
export type { FieldAnswer, Refresh } from '../../../src/schema/fieldAnswer.ts';
export type { FieldList, FieldRecord, StoredField } from '../../../src/schema/fieldRecord.ts';
export type { Hindcast } from '../../../src/schema/hindcast.ts';
export type { HindcastEvent } from '../../../src/schema/hindcastEvents.ts';
export type { ImportEvent } from '../../../src/schema/importEvents.ts';
export type { KeptLabel, LabelEntry, LabelList, StoredLabel } from '../../../src/schema/labelEntry.ts';
export type { NearestStations } from '../../../src/schema/place.ts';
export type { QuestionInput } from '../../../src/schema/question.ts';
export type { ReadOptions } from '../../../src/schema/readOptions.ts';
export type { Removed } from '../../../src/schema/recordId.ts';
export type { RegionEvent, RegionInput, RegionRow } from '../../../src/schema/region.ts';
export type { ApplicationRecord, RestrictedUse } from '../../../src/schema/restrictedUse.ts';
export type { StationCheck } from '../../../src/schema/stationCheck.ts';
export type { TableImport } from '../../../src/schema/tableImport.ts';
export type { StationExtent } from '../../../src/schema/weather.ts';
