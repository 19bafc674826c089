import { InvalidInputError } from '../errors.ts';
import type { FieldPlan, FieldRecord } from '../schema/fieldRecord.ts';
import type { FieldTreatment } from '../schema/fieldTreatment.ts';
import { type QuestionInput, questionSchema } from '../schema/question.ts';
import type { StationExtent } from '../schema/weather.ts';

/**
 * A field and one of its planned crops as a question. The latest treatment before planting is the question's own; all
 * earlier ones stand beside it. Weather counts as observed up to the last day of the station's record.
 *
 * @param station the field's station with the extent of its record; null where there is no record of it
 * @throws {InvalidInputError} FIELD_WITHOUT_STATION, FIELD_WITHOUT_TREATMENT
 */
export function fieldQuestion(
  record: FieldRecord,
  plan: FieldPlan,
  station: StationExtent | null,
): QuestionInput {
  if (record.station === null) {
    throw new InvalidInputError('FIELD_WITHOUT_STATION', 'No weather station is chosen for this field.', {
      hint: 'Choose one near it: its record stands for the field’s weather.',
      details: { field: 'station' },
    });
  }
  const { main, others } = treatmentsBefore(record, plan);
  const observed = station !== null && station.lastDate >= main.appliedOn ? station.lastDate : undefined;
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
    ...sprayed(main),
    crop: plan.crop,
    standUse: plan.standUse,
    plantOn: plan.plantOn,
    oddsLimit: plan.oddsLimit,
    asOf: observed,
    evidence: record.evidence.length > 0 ? record.evidence : undefined,
    ...severalTreatments(main, others),
  }) as QuestionInput;
}

function treatmentsBefore({ treatments }: FieldRecord, { plantOn }: FieldPlan) {
  const before = treatments
    .filter(({ appliedOn }) => appliedOn <= plantOn)
    .sort((a, b) => (a.appliedOn < b.appliedOn ? 1 : a.appliedOn > b.appliedOn ? -1 : 0));
  const [main, ...others] = before;
  if (main !== undefined) return { main, others };
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

const sprayed = (treatment: FieldTreatment) => ({
  appliedOn: treatment.appliedOn,
  residual: treatment.residual,
  labelEntry: treatment.labelEntry,
  interval: treatment.interval,
  halfLifeDays: treatment.halfLifeDays,
  rateFraction: treatment.rateFraction,
  overlapFactor: treatment.overlapFactor,
  canopyFraction: treatment.canopyFraction,
});

/** Earlier treatments and overlap zones, for as far as a question takes them. */
function severalTreatments({ zones }: FieldTreatment, others: readonly FieldTreatment[]) {
  const asked = {
    otherTreatments: others.map((one) => withoutAbsent(sprayed(one))),
    zones,
  };
  return Object.fromEntries(
    Object.entries(asked).filter(([key, list]) => list.length > 0 && key in questionSchema.shape),
  );
}

const withoutAbsent = (fields: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
