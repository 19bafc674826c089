import type { FieldFacts } from '../analysis/labelConditions.ts';
import { parseIsoDate } from '../calendar.ts';
import type { Question } from '../schema/question.ts';
import { meanAnnualRainMm } from './meanAnnualRain.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { givenTextureGroup } from './resolveTexture.ts';
import type { StationWeather } from './stationWeather.ts';

/** What a label's conditions ask of the field beside the season's water; null where a question does not tell. */
export function fieldFacts(resolved: ResolvedQuestion, { climate }: StationWeather): FieldFacts {
  const { question, rateGramsPerHa } = resolved;
  return {
    soilPh: question.soilPh,
    organicMatterPercent: question.organicMatterPercent ?? null,
    textureGroup: givenTextureGroup(question),
    rateGramsPerHa,
    bioassay: latestBioassay(question),
    meanAnnualRainMm: meanAnnualRainMm(climate),
    yearlyIrrigationMm: yearlyIrrigation(question),
    oddsLimit: question.oddsLimit,
  };
}

/** The latest bioassay up to the planting date; of one day's several, an injured one counts. */
function latestBioassay({ evidence, plantOn }: Question): FieldFacts['bioassay'] {
  const told = evidence.flatMap((one) => (one.kind === 'bioassay' && one.on <= plantOn ? [one] : []));
  const latest = told
    .map(({ on }) => on)
    .sort()
    .at(-1);
  if (latest === undefined) return null;
  return told.some(({ on, injured }) => on === latest && injured) ? 'injured' : 'clean';
}

/** Irrigation of the year from the application on. [mm] */
function yearlyIrrigation({ irrigation, appliedOn }: Question): number {
  const yearOn = parseIsoDate(appliedOn) + 365;
  return irrigation
    .filter(({ date }) => date >= appliedOn && parseIsoDate(date) < yearOn)
    .reduce((sum, { mm }) => sum + mm, 0);
}
