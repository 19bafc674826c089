import { InvalidInputError } from '../errors.ts';
import type { Answer } from '../schema/answer.ts';
import type { FieldRecord } from '../schema/fieldRecord.ts';
import type { AskedQuestion } from '../schema/question.ts';
import type { Sheet } from '../schema/sheet.ts';
import { acresFromHectares } from '../units.ts';
import { type AnswerDeps, answerField } from './answerField.ts';
import { type SheetUnits, sheetInputs, sheetRain } from './sheetInputs.ts';
import { sheetPicture } from './sheetPicture.ts';
import { count, sayDate, sayLimit, sayOdds } from './words.ts';

/**
 * The page for the grower and the file, of one question.
 *
 * @throws {InvalidInputError} SHEET_UNCONFIRMED while an interval rests on the catalogue; and what {@link answerField}
 *   throws
 * @example (await sheet({ ...demoQuestion, interval: '4 months' }, deps, 'us')).title // 'flumioxazin before lentil'
 */
export async function sheet(input: AskedQuestion, deps: AnswerDeps, units: SheetUnits): Promise<Sheet> {
  return sheetOf(await answerField(input, deps, { season: true }), units);
}

/**
 * A sheet from an answer.
 * @param field the kept field that the answer is about; null where the question stands by itself
 * @throws {InvalidInputError} SHEET_UNCONFIRMED
 */
export function sheetOf(
  answer: Answer,
  units: SheetUnits,
  field: Pick<FieldRecord, 'farm' | 'name' | 'areaHa'> | null = null,
): Sheet {
  refuseUnconfirmed(answer);
  const { inputs, weather, model } = answer;
  const { station } = weather;
  return {
    title: `${inputs.residual.name} before ${inputs.crop}`,
    field: field && { farm: field.farm, name: field.name, area: areaWords(field.areaHa, units) },
    invented: station.invented
      ? `Invented example: ${station.name} is no real place, and its weather never fell anywhere.`
      : null,
    sentence: answer.sentence,
    advice: answer.advice,
    floor: `The label is the law and the floor: nothing here allows planting ${inputs.crop} before ${sayDate(answer.labelDate)} (${inputs.interval.text}).`,
    dates: datesOf(answer),
    thirds: thirdsOf(answer, units),
    zones: answer.zones.map(({ name, overlapFactor, oddsAtPlanting, clearDate }) => ({
      label: `${name}, ${overlapFactor} times the dose`,
      value: `${oddsAtPlanting === null ? 'no odds reckoned' : sayOdds(oddsAtPlanting)}, clear ${clearWords(clearDate)}`,
    })),
    picture: sheetPicture(answer),
    reasons: [...(answer.why?.words ?? []), ...(answer.evidence?.findings ?? []).map(({ text }) => text)],
    conditions: answer.conditions.map(({ state, text }) => ({ label: state, value: text })),
    cautions: answer.cautions.map(({ text }) => text),
    inputs: sheetInputs(answer, units),
    weather: `${station.name} (${station.id}), ${weather.source}, ${sayDate(weather.firstDate)} to ${sayDate(weather.lastDate)}; ${
      weather.observedThrough === null
        ? 'planned from past years alone'
        : `this season observed through ${sayDate(weather.observedThrough)}`
    }; ${weather.missingRainPercent.toFixed(1)} % of its rain days are missing.`,
    dataDate: weather.lastDate,
    model: `${model.name}, version ${model.version}`,
  };
}

/** A sheet leaves the house: it must rest on labels that somebody has read. */
function refuseUnconfirmed({ inputs }: Answer): void {
  const { residual, mainInterval, otherTreatments, crop } = inputs;
  const treatments = [{ residual, interval: mainInterval }, ...otherTreatments];
  const open = treatments.filter((one) => !one.interval.confirmed);
  if (open.length === 0) return;
  const said = open.map((one) => `${one.interval.text} from ${one.residual.name}`).join(', ');
  throw new InvalidInputError(
    'SHEET_UNCONFIRMED',
    `A sheet needs intervals read from a label, and these to ${crop} are not confirmed yet: ${said}.`,
    {
      hint: 'Read the interval from the label of the product in your shed and give it (--interval "4 months", interval, or your own label entry).',
      details: { field: 'interval', unconfirmed: open.map((one) => one.residual.name) },
    },
  );
}

function areaWords(areaHa: number | null, units: SheetUnits): string | null {
  if (areaHa === null) return null;
  const [size, unit] = units === 'us' ? [acresFromHectares(areaHa), 'acres'] : [areaHa, 'ha'];
  return `${Number(size.toFixed(1))} ${unit}`;
}

const clearWords = (clearDate: string | null): string =>
  clearDate === null ? 'on no date that was found' : sayDate(clearDate);

function datesOf(answer: Answer): Sheet['dates'] {
  const { question } = answer.inputs;
  const { oddsAtPlanting, oddsRange: range, oddsAtLabelDate } = answer;
  const limit = sayLimit(question.oddsLimit);
  const dates = [
    { label: 'Sprayed', value: sayDate(question.appliedOn) },
    { label: 'Planting asked about', value: sayDate(question.plantOn) },
    { label: 'Label date', value: sayDate(answer.labelDate) },
  ];
  if (oddsAtPlanting === null || range === null || oddsAtLabelDate === null) return dates;
  const percent = (odds: number) => `${Math.round(odds * 100)} %`;
  return [
    ...dates,
    { label: `Clear date, odds limit ${limit}`, value: clearWords(answer.clearDate) },
    {
      label: 'Odds of harm at planting',
      value: `${sayOdds(oddsAtPlanting)}; ${percent(range.low)} to ${percent(range.high)} from ${count(range.years, 'year')} of weather alone`,
    },
    { label: 'Odds at the label date', value: sayOdds(oddsAtLabelDate) },
  ];
}

function thirdsOf({ thirds }: Answer, units: SheetUnits): Sheet['thirds'] {
  return thirds.map(({ name, odds, clearDate, warmRainMm }) => ({
    label: `${name} third of the years`,
    value: `${sayOdds(odds)} at planting, clear ${clearWords(clearDate)}; ${sheetRain(warmRainMm, units)} of rain on warm soil by the label date`,
  }));
}
