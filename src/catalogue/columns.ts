/** How a CSV cell is read: as it stands, as a number, or as parts between semicolons. */
export type CellKind = 'text' | 'number' | 'list';

/** Where one CSV column goes in its record; `path` is dotted. */
export interface Column {
  readonly column: string;
  readonly path: string;
  readonly kind: CellKind;
}

const text = (column: string, path: string): Column => ({ column, path, kind: 'text' });
const number = (column: string, path: string): Column => ({ column, path, kind: 'number' });
const list = (column: string, path: string): Column => ({ column, path, kind: 'list' });

/** The two columns that say where a figure comes from. */
const provenance = (column: string, path: string): Column[] => [
  text(`${column}_mark`, `${path}.mark`),
  list(`${column}_sources`, `${path}.sources`),
];

export const ACTIVE_COLUMNS: readonly Column[] = [
  text('iso_name', 'isoName'),
  list('aliases', 'aliases'),
  number('mode_of_action_group', 'group'),
  ...provenance('group', 'provenance.group'),
  text('soil_residual', 'soilResidual'),
  number('half_life_typical_days', 'fieldHalfLifeDays.typical'),
  ...provenance('half_life_typical', 'provenance.halfLifeTypical'),
  number('half_life_low_days', 'fieldHalfLifeDays.low'),
  ...provenance('half_life_low', 'provenance.halfLifeLow'),
  number('half_life_high_days', 'fieldHalfLifeDays.high'),
  ...provenance('half_life_high', 'provenance.halfLifeHigh'),
  number('koc_ml_per_g', 'kocMlPerG.typical'),
  number('koc_low_ml_per_g', 'kocMlPerG.low'),
  number('koc_high_ml_per_g', 'kocMlPerG.high'),
  ...provenance('koc', 'provenance.koc'),
  number('typical_rate_low_g_per_ha', 'typicalRateGramsPerHa.low'),
  number('typical_rate_high_g_per_ha', 'typicalRateGramsPerHa.high'),
  ...provenance('typical_rate', 'provenance.typicalRate'),
  number('top_rate_g_per_ha', 'topRateGramsPerHa'),
  text('top_rate_basis', 'topRateBasis'),
  ...provenance('top_rate', 'provenance.topRate'),
  text('main_loss_route', 'mainLossRoute'),
  ...provenance('loss_route', 'provenance.mainLossRoute'),
  number('moisture_exponent', 'moistureExponent'),
  ...provenance('moisture_exponent', 'provenance.moistureExponent'),
  number('q10', 'q10'),
  ...provenance('q10', 'provenance.q10'),
  text('handling_caution', 'handling'),
  ...provenance('handling', 'provenance.handling'),
  list('cautions', 'cautions'),
];

export const CROP_COLUMNS: readonly Column[] = [
  text('name', 'name'),
  text('botanical_name', 'botanicalName'),
  list('aliases', 'aliases'),
  text('kind', 'kind'),
  list('part_of', 'partOf'),
  list('sensitive_groups', 'sensitivity.groups'),
  text('sensitivity', 'sensitivity.text'),
  ...provenance('sensitivity', 'sensitivity'),
  text('harvested_for', 'use.harvestedFor'),
  text('grazed_or_hayed', 'use.grazedOrHayed'),
  text('cover_crop', 'use.coverCrop'),
  ...provenance('facts', 'use'),
];

export const CROP_GROUP_COLUMNS: readonly Column[] = [
  text('name', 'name'),
  text('reach', 'reach'),
  text('meaning', 'meaning'),
  text('mark', 'mark'),
  list('sources', 'sources'),
];

export const INTERVAL_COLUMNS: readonly Column[] = [
  number('row_id', 'rowId'),
  text('active', 'active'),
  list('partners', 'partners'),
  text('crop', 'crop'),
  text('crop_on_source', 'cropOnSource'),
  text('kind', 'kind'),
  number('min_months', 'minMonths'),
  number('max_months', 'maxMonths'),
  number('min_days', 'minDays'),
  number('max_days', 'maxDays'),
  text('rate_condition_g_per_ha', 'rateConditionGramsPerHa'),
  text('condition', 'condition'),
  text('variety', 'variety'),
  text('bioassay', 'bioassay'),
  text('country', 'country'),
  text('region', 'region'),
  text('source', 'source'),
  text('mark', 'mark'),
  text('note', 'note'),
];

export const COUNTING_WINDOW_COLUMNS: readonly Column[] = [
  text('id', 'id'),
  text('kind', 'kind'),
  text('from', 'from'),
  text('to', 'to'),
  number('threshold_mm', 'thresholdMm'),
  text('advice', 'advice'),
  text('country', 'country'),
  text('region', 'region'),
  list('sources', 'sources'),
  text('mark', 'mark'),
];

export const SOURCE_COLUMNS: readonly Column[] = [
  text('id', 'id'),
  text('reference', 'reference'),
  text('seen', 'seen'),
];
