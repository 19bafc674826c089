import { type FieldRecord, fieldRecordSchema } from '../../schema/fieldRecord.ts';
import {
  acresFromHectares,
  gramsPerHaFromOuncesPerAcre,
  hectaresFromAcres,
  inchesFromMm,
  mmFromInches,
  ouncesPerAcreFromGramsPerHa,
} from '../../units.ts';
import type { Column } from './column.ts';
import type { TableShape } from './tableShape.ts';

const word = (header: string, path: string): Column => ({ header, path, kind: 'word' });
const text = (header: string, path: string): Column => ({ header, path, kind: 'text' });
const number = (header: string, path: string): Column => ({ header, path, kind: 'number' });
const json = (header: string, path: string): Column => ({ header, path, kind: 'json' });
const area = (name: string, path: string): Column => ({
  ...number(`${name}_ha`, path),
  us: { header: `${name}_acres`, from: acresFromHectares, toMetric: hectaresFromAcres },
});
const water = (name: string, path: string): Column => ({
  ...{ header: `${name}_mm`, path, kind: 'water' },
  us: { header: `${name}_in`, from: inchesFromMm, toMetric: mmFromInches },
});

/** Fields as a table: what spreadsheets are good at in columns of its own, the rest as JSON. */
export const FIELD_TABLE: TableShape<FieldRecord> = {
  schema: fieldRecordSchema,
  idFrom: ['farm', 'name'],
  head: [
    word('id', 'id'),
    text('farm', 'farm'),
    text('field', 'name'),
    word('country', 'country'),
    area('area', 'areaHa'),
    number('latitude_deg', 'place.latitudeDeg'),
    number('longitude_deg', 'place.longitudeDeg'),
    word('station', 'station'),
    word('soil_class', 'soilClass'),
    number('sand_percent', 'sandPercent'),
    number('clay_percent', 'clayPercent'),
    number('organic_matter_percent', 'organicMatterPercent'),
    number('cover_fraction', 'coverFraction'),
    number('soil_ph', 'soilPh'),
    text('ph_note', 'phNote'),
    text('note', 'note'),
    water('gauge', 'gauge'),
    water('irrigation', 'irrigation'),
    json('tillage_json', 'tillage'),
    json('evidence_json', 'evidence'),
    json('outcomes_json', 'outcomes'),
  ],
  lists: [
    {
      ...{ key: 'treatments', by: 'id', numbered: 'treatment' },
      columns: [
        word('treatment', 'id'),
        word('applied_on', 'appliedOn'),
        word('residual', 'residual'),
        word('label_entry', 'labelEntry'),
        word('interval', 'interval'),
        json('intervals_json', 'intervals'),
        number('half_life_days', 'halfLifeDays'),
        number('rate_fraction', 'rateFraction'),
        number('overlap_factor', 'overlapFactor'),
        number('canopy_fraction', 'canopyFraction'),
        {
          ...number('rate_g_per_ha', 'rateGramsPerHa'),
          us: {
            header: 'rate_oz_per_acre',
            from: ouncesPerAcreFromGramsPerHa,
            toMetric: gramsPerHaFromOuncesPerAcre,
          },
        },
        json('growth_stage_json', 'growthStage'),
        area('treated', 'areaHa'),
        json('zones_json', 'zones'),
        json('record_json', 'record'),
      ],
    },
    {
      ...{ key: 'plans', by: 'id', numbered: 'plan' },
      columns: [
        word('plan', 'id'),
        word('crop', 'crop'),
        word('plant_on', 'plantOn'),
        word('stand_use', 'standUse'),
        number('odds_limit', 'oddsLimit'),
      ],
    },
  ],
};
