import type { SeasonOdds } from '../analysis/seasonOdds.ts';
import { parseIsoDate } from '../calendar.ts';
import { irrigationCourse } from '../model/weather/ownRecords.ts';
import type { Caution } from '../schema/answer.ts';
import type { Question } from '../schema/question.ts';
import type { WeatherHelp } from '../schema/weatherHelp.ts';
import type { Say } from './say.ts';
import type { StationWeather } from './stationWeather.ts';
import { count } from './words.ts';

/** What a user must know of weather that is not the station's own: lent, filled, measured or given in the field. */
export function weatherCautions(
  question: Question,
  { climate, help }: StationWeather,
  odds: SeasonOdds | null,
  how: Say,
): Caution[] {
  const { station } = climate.series;
  const cautions: Caution[] = [];
  const say = (code: string, text: string) => cautions.push({ code, text });
  if (help.temperatureStation) {
    say(
      'temperatures-borrowed',
      `${station.name} has no temperatures of its own. ${companionWords(help.temperatureStation, how)}`,
    );
  } else if (question.temperatureStation !== undefined) {
    say(
      'temperatures-own',
      `${station.name} has temperatures of its own; those of ${question.temperatureStation} are not used.`,
    );
  }
  if (help.neighbourRainDays > 0) {
    const names = help.rainNeighbours.map(({ id, distanceKm }) => `${id}${away(distanceKm, how)}`).join(', ');
    say(
      'rain-from-neighbours',
      `Rain of ${count(help.neighbourRainDays, 'missing day')} is taken from stations around: ${names}. Those days still count as missing.`,
    );
  } else if (question.fillFromNeighbours) {
    say('no-rain-from-neighbours', `No rain gap could be filled from a station within ${how.distance(50)}.`);
  }
  if (help.gaugeDaysOutside > 0) {
    say(
      'gauge-outside',
      `${count(help.gaugeDaysOutside, 'day')} of your gauge ${help.gaugeDaysOutside === 1 ? 'lies' : 'lie'} outside the station’s record and ${help.gaugeDaysOutside === 1 ? 'does' : 'do'} not count.`,
    );
  }
  if (question.asOf === undefined && question.gauge.some(({ date }) => date >= question.appliedOn)) {
    say(
      'gauge-planning',
      'Your gauge readings since the application count only with a date up to which the season is observed (as of).',
    );
  }
  if (odds !== null) irrigationCaution(question, odds, say, how);
  return cautions;
}

const away = (distanceKm: number | null, how: Say): string =>
  distanceKm === null ? '' : ` (${how.distance(distanceKm)} away)`;

function companionWords(lender: NonNullable<WeatherHelp['temperatureStation']>, how: Say): string {
  const { id, name, distanceKm, elevationDifferenceM, addedC } = lender;
  const height =
    elevationDifferenceM === null
      ? ', with nothing added for height because one of the heights is not known'
      : `, with ${how.degrees(addedC)} added for ${how.height(Math.abs(elevationDifferenceM))} of height`;
  return `Those of ${name} (${id})${away(distanceKm, how)} are used${height}.`;
}

function irrigationCaution(
  { irrigation }: Question,
  odds: SeasonOdds,
  say: (code: string, text: string) => void,
  how: Say,
): void {
  if (irrigation.length === 0) return;
  const entries = irrigation.map(({ date, mm }) => ({ day: parseIsoDate(date), mm }));
  const counted = irrigationCourse(entries, odds.firstDay, odds.horizonOffset).amountsMm;
  const countedMm = counted.reduce((sum, mm) => sum + mm, 0);
  const givenMm = entries.reduce((sum, { mm }) => sum + mm, 0);
  say(
    'irrigation',
    `Irrigation of ${how.water(countedMm)} is taken to come on its days whatever the weather does.${
      givenMm - countedMm > 1e-9
        ? ` Another ${how.water(givenMm - countedMm)} lies too far from the season to count.`
        : ''
    }`,
  );
}
