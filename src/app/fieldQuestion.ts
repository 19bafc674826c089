import { InvalidInputError } from '../errors.ts';
import type { FieldPlan, FieldRecord } from '../schema/fieldRecord.ts';
import type { FieldTreatment } from '../schema/fieldTreatment.ts';
import type { AskedQuestion } from '../schema/question.ts';
import type { StationExtent } from '../schema/weather.ts';

/** Treatments longer before planting than this take no part: no published interval reaches back so far. [years] */
const YEARS_BACK = 5;
/** Most treatments beside the main one that a question takes; the latest are kept. */
const MOST_BESIDE = 10;

/**
 * A field and one of its planned crops as a question. The latest treatment before planting is the question's own;
 * earlier ones stand beside it. Evidence counts from the first of them on, and weather counts as observed up to the last
 * day of the station's record.
 *
 * @param station the field's station with the extent of its record; null where there is no record of it
 * @throws {InvalidInputError} FIELD_WITHOUT_STATION, FIELD_WITHOUT_TREATMENT
 */
export function fieldQuestion(
  record: FieldRecord,
  plan: FieldPlan,
  station: StationExtent | null,
): AskedQuestion {
  if (record.station === null) {
    throw new InvalidInputError('FIELD_WITHOUT_STATION', 'No weather station is chosen for this field.', {
      hint: 'Choose one near it: its record stands for the field’s weather.',
      details: { field: 'station' },
    });
  }
  const { main, others } = treatmentsBefore(record, plan);
  const observed = station !== null && station.lastDate >= main.appliedOn ? station.lastDate : undefined;
  const firstOn = others.at(-1)?.appliedOn ?? main.appliedOn;
  const evidence = record.evidence.filter(({ on }) => on >= firstOn);
  const latitudeDeg = station?.latitudeDeg === null ? record.place?.latitudeDeg : undefined;
  return withoutAbsent({
    station: record.station,
    latitudeDeg,
    gauge: record.gauge.length > 0 ? record.gauge.map(({ date, mm }) => ({ date, rainMm: mm })) : undefined,
    irrigation: record.irrigation.length > 0 ? record.irrigation : undefined,
    soilClass: record.soilClass,
    sandPercent: record.sandPercent,
    clayPercent: record.clayPercent,
    organicMatterPercent: record.organicMatterPercent,
    coverFraction: record.coverFraction,
    soilPh: record.soilPh,
    country: record.country,
    ...sprayed(main, plan),
    crop: plan.crop,
    standUse: plan.standUse,
    plantOn: plan.plantOn,
    oddsLimit: plan.oddsLimit,
    asOf: observed,
    evidence: evidence.length > 0 ? evidence : undefined,
    otherTreatments: others.length > 0 ? others.map((other) => sprayed(other, plan)) : undefined,
    zones: main.zones.length > 0 ? main.zones : undefined,
  }) as AskedQuestion;
}

function treatmentsBefore({ treatments }: FieldRecord, { plantOn }: FieldPlan) {
  const earliest = `${Number(plantOn.slice(0, 4)) - YEARS_BACK}${plantOn.slice(4)}`;
  const [main, ...others] = treatments
    .filter(({ appliedOn }) => appliedOn <= plantOn)
    .sort((a, b) => (a.appliedOn < b.appliedOn ? 1 : a.appliedOn > b.appliedOn ? -1 : 0));
  if (main !== undefined) {
    const beside = others.filter(({ appliedOn }) => appliedOn >= earliest).slice(0, MOST_BESIDE);
    return { main, others: beside };
  }
  throw new InvalidInputError(
    'FIELD_WITHOUT_TREATMENT',
    treatments.length === 0
      ? 'No treatment of this field is entered.'
      : `Every treatment of this field lies after the planting date ${plantOn}.`,
    {
      hint: 'Enter what was or is to be sprayed, and when.',
      details: { field: 'treatments' },
    },
  );
}

/** The treatment before a planned crop, without what only the field's own page needs. */
function sprayed(
  { id: _id, areaHa: _area, zones: _zones, record: _record, intervals, ...treatment }: FieldTreatment,
  { crop }: FieldPlan,
) {
  const own = intervals.find((one) => sameCrop(one.crop, crop));
  return withoutAbsent({ ...treatment, interval: own?.interval ?? treatment.interval });
}

const sameCrop = (one: string, other: string): boolean =>
  one.trim().toLowerCase() === other.trim().toLowerCase();

const withoutAbsent = (fields: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
