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
  number('half_life_typical_days', 'fieldHalfLifeDays.typical'),
  ...provenance('half_life_typical', 'provenance.halfLifeTypical'),
  number('half_life_low_days', 'fieldHalfLifeDays.low'),
  number('half_life_high_days', 'fieldHalfLifeDays.high'),
  ...provenance('half_life_range', 'provenance.halfLifeRange'),
  number('koc_ml_per_g', 'kocMlPerG'),
  ...provenance('koc', 'provenance.koc'),
  number('top_rate_g_per_ha', 'topRateGramsPerHa'),
  ...provenance('top_rate', 'provenance.topRate'),
  text('ph_effect', 'phEffect.direction'),
  text('ph_caution', 'phEffect.caution'),
  ...provenance('ph', 'provenance.phEffect'),
  text('main_loss_route', 'mainLossRoute'),
  ...provenance('loss_route', 'provenance.mainLossRoute'),
  number('moisture_exponent', 'moistureExponent'),
  ...provenance('moisture_exponent', 'provenance.moistureExponent'),
  number('q10', 'q10'),
  ...provenance('q10', 'provenance.q10'),
  list('cautions', 'cautions'),
];

export const CROP_COLUMNS: readonly Column[] = [
  text('name', 'name'),
  list('aliases', 'aliases'),
  text('kind', 'kind'),
  text('sensitivity', 'sensitivity'),
  ...provenance('sensitivity', 'sensitivityProvenance'),
];

export const INTERVAL_COLUMNS: readonly Column[] = [
  number('row_id', 'rowId'),
  text('active', 'active'),
  text('crop', 'crop'),
  text('crop_on_source', 'cropOnSource'),
  text('kind', 'kind'),
  number('min_months', 'minMonths'),
  number('max_months', 'maxMonths'),
  number('min_days', 'minDays'),
  number('max_days', 'maxDays'),
  text('rate_condition_g_per_ha', 'rateConditionGramsPerHa'),
  number('min_rain_mm', 'minRainMm'),
  text('rain_condition', 'rainCondition'),
  text('ph_condition', 'phCondition'),
  text('soil_condition', 'soilCondition'),
  text('zone_condition', 'zoneCondition'),
  text('bioassay', 'bioassay'),
  text('region', 'region'),
  text('source', 'source'),
  text('mark', 'mark'),
  text('note', 'note'),
];

export const SOURCE_COLUMNS: readonly Column[] = [
  text('id', 'id'),
  text('reference', 'reference'),
  text('seen', 'seen'),
];
