import { InvalidInputError } from '../errors.ts';
import type { Answer } from '../schema/answer.ts';
import type { FieldRecord } from '../schema/fieldRecord.ts';
import type { AskedQuestion } from '../schema/question.ts';
import type { Sheet } from '../schema/sheet.ts';
import { type AnswerDeps, answerField } from './answerField.ts';
import { type Say, sayIn } from './say.ts';
import { sheetInputs } from './sheetInputs.ts';
import { sheetPicture } from './sheetPicture.ts';
import { count, rangeWords, sayLimit, sayOdds } from './words.ts';

/**
 * The page for the grower and the file, of one question.
 *
 * @throws {InvalidInputError} SHEET_UNCONFIRMED while an interval rests on the catalogue; and what {@link answerField}
 *   throws
 * @example (await sheet({ ...demoQuestion, interval: '4 months' }, deps)).title // 'flumioxazin before lentil'
 */
export async function sheet(input: AskedQuestion, deps: AnswerDeps): Promise<Sheet> {
  return sheetOf(await answerField(input, deps, { season: true }), sayIn(deps.wording));
}

/**
 * A sheet from an answer.
 * @param say as the answer's own sentences were said
 * @param field the kept field that the answer is about; null where the question stands by itself
 * @throws {InvalidInputError} SHEET_UNCONFIRMED
 */
export function sheetOf(
  answer: Answer,
  say: Say,
  field: Pick<FieldRecord, 'farm' | 'name' | 'areaHa'> | null = null,
): Sheet {
  refuseUnconfirmed(answer);
  const { inputs, weather, model } = answer;
  const { station } = weather;
  return {
    title: `${inputs.residual.name} before ${inputs.crop}`,
    field: field && {
      farm: field.farm,
      name: field.name,
      area: field.areaHa === null ? null : say.area(field.areaHa),
    },
    invented: station.invented
      ? `Invented example: ${station.name} is no real place, and its weather never fell anywhere.`
      : null,
    sentence: answer.sentence,
    advice: answer.advice,
    floor: `The label is the law and the floor: nothing here allows planting ${inputs.crop} before ${say.dates.full(answer.labelDate)} (${inputs.interval.text}).`,
    dates: datesOf(answer, say),
    thirds: thirdsOf(answer, say),
    zones: answer.zones.map(({ name, overlapFactor, oddsAtPlanting, clearDate }) => ({
      label: `${name}, ${overlapFactor} times the dose`,
      value: `${oddsAtPlanting === null ? 'no odds reckoned' : sayOdds(oddsAtPlanting)}, clear ${clearWords(clearDate, say)}`,
    })),
    picture: sheetPicture(answer, say),
    reasons: [...(answer.why?.words ?? []), ...(answer.evidence?.findings ?? []).map(({ text }) => text)],
    conditions: answer.conditions.map(({ state, text }) => ({ label: state, value: text })),
    cautions: answer.cautions.map(({ text }) => text),
    inputs: sheetInputs(answer, say),
    weather: `${station.name} (${station.id}), ${weather.source}, ${say.dates.full(weather.firstDate)} to ${say.dates.full(weather.lastDate)}; ${
      weather.observedThrough === null
        ? 'planned from past years alone'
        : `this season observed through ${say.dates.full(weather.observedThrough)}`
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

const clearWords = (clearDate: string | null, { dates }: Say): string =>
  clearDate === null ? 'on no date that was found' : dates.full(clearDate);

function datesOf(answer: Answer, say: Say): Sheet['dates'] {
  const { question } = answer.inputs;
  const { oddsAtPlanting, oddsRange: range, oddsAtLabelDate } = answer;
  const limit = sayLimit(question.oddsLimit);
  const dates = [
    { label: 'Sprayed', value: say.dates.full(question.appliedOn) },
    { label: 'Planting asked about', value: say.dates.full(question.plantOn) },
    { label: 'Label date', value: say.dates.full(answer.labelDate) },
  ];
  if (oddsAtPlanting === null || range === null || oddsAtLabelDate === null) return dates;
  return [
    ...dates,
    { label: `Clear date, odds limit ${limit}`, value: clearWords(answer.clearDate, say) },
    {
      label: 'Odds of harm at planting',
      value: `${sayOdds(oddsAtPlanting)}, ${rangeWords(range)} by ${count(range.years, 'year')} of weather alone`,
    },
    { label: 'Odds at the label date', value: sayOdds(oddsAtLabelDate) },
  ];
}

function thirdsOf({ thirds }: Answer, say: Say): Sheet['thirds'] {
  return thirds.map(({ name, odds, clearDate, warmRainMm }) => ({
    label: `${name} third of the years`,
    value: `${sayOdds(odds)} at planting, clear ${clearWords(clearDate, say)}; ${say.water(warmRainMm)} of rain on warm soil by the label date`,
  }));
}
