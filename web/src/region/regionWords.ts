import { oddsWord, sayOdds } from '../answer/oddsInWords.ts';
import type { QuestionInput, RegionRow } from '../api/contract.ts';
import { sayOddsLimit } from '../question/questionInWords.ts';
import type { DateWords } from '../units/dates.ts';
import { rainText, type Units } from '../units/units.ts';
import { type Measure, shareOf } from './measures.ts';
import type { RegionAsked } from './regionAddress.ts';
import type { RegionAnswer } from './useRegion.ts';

export interface RegionFinding {
  readonly head: string;
  readonly rest: string;
}

const many = (count: number): string => count.toLocaleString('en-US');
const stations = (count: number): string => `${many(count)} ${count === 1 ? 'station' : 'stations'}`;

/** A station’s odds: this season’s where it has them, else those of a normal year. */
const oddsOf = (row: RegionRow): number | null =>
  row.figures && (row.figures.oddsNow ?? row.figures.oddsNormal);

/** The answer in two sentences. */
export function regionFinding(
  { start, rows }: RegionAnswer,
  ended: boolean,
  dates: DateWords,
): RegionFinding {
  const { appliedOn, plantOn, oddsLimit, interval } = start.question;
  const told = rows
    .flatMap((row) => {
      const odds = oddsOf(row);
      return odds === null || row.figures === null ? [] : [{ row, odds, labelDate: row.figures.labelDate }];
    })
    .sort((a, b) => b.odds - a.odds);
  const silent = rows.length - told.length;
  if (told.length === 0) {
    return {
      head: ended
        ? `None of ${stations(start.stations)} can answer this.`
        : `Looking at ${stations(start.stations)}…`,
      rest: rows.length === 0 ? 'The map fills as answers come.' : 'The reasons stand below.',
    };
  }
  const [highest] = told;
  const over = told.filter(({ odds }) => odds > oddsLimit).length;
  const { labelDate } = highest;
  const basis =
    interval === undefined
      ? `, if your label’s interval ends on ${dates.full(labelDate)} as the catalogue has it`
      : `, by your label’s interval to ${dates.full(labelDate)}`;
  const barred =
    plantOn < labelDate
      ? `The label does not let ${start.crop} in before ${dates.full(labelDate)}. By the weather alone, at `
      : 'At ';
  const all = told.length === 1 ? 'the one station that answers' : `all ${stations(told.length)}`;
  const [which, verb] =
    over === 0
      ? [all, 'within']
      : [told.length === 1 ? all : `${many(over)} of ${stations(told.length)}`, 'over'];
  const middle = told[Math.floor(told.length / 2)].odds;
  return {
    head:
      `${ended ? '' : 'So far: '}${barred}${which} the odds that ${start.residual} sprayed ` +
      `${dates.full(appliedOn)} hurts ${start.crop} planted ${dates.near(plantOn, appliedOn)} are ${verb} your limit ` +
      `of ${sayOddsLimit(oddsLimit)}${basis}.`,
    rest:
      `Highest: ${highest.row.name}, ${inBoth(highest.odds)}.` +
      (told.length > 2 ? ` The station in the middle: ${sayOdds(middle)} seasons and soils.` : '') +
      (silent > 0 ? ` ${stations(silent)} cannot answer.` : ''),
  };
}

const inBoth = (odds: number): string =>
  `${sayOdds(odds)} seasons and soils (${Math.round(odds * 100)} %), ${oddsWord(odds)}`;

/** The question in words, for print. */
export function regionInWords({ question, states, box, soils }: RegionAsked, dates: DateWords): string {
  const { residual, appliedOn, crop, plantOn, soilClass }: QuestionInput = question;
  const where =
    states !== null
      ? ` in ${states.join(', ')}`
      : box !== null
        ? ` between ${box.west}° and ${box.east}° east, ${box.south}° and ${box.north}° north`
        : '';
  return `At every station${where}: ${residual} sprayed ${dates.full(appliedOn)}, ${crop} planted ${dates.full(plantOn)}, on ${soilClass ?? 'the soil given'}${soils === null ? '' : `, ${stations(Object.keys(soils).length)} with a soil of their own`}.`;
}

/** What the map shows, as a finding. */
export function mapFinding(rows: readonly RegionRow[], measure: Measure, oddsLimit: number): string {
  const values = rows.flatMap((row) => shareOf(row, measure) ?? []);
  const of = `of ${stations(values.length)}`;
  if (values.length === 0) return 'No station has a number for this.';
  const above = (limit: number) => many(values.filter((value) => value > limit).length);
  const below = (limit: number) => many(values.filter((value) => value < limit).length);
  switch (measure) {
    case 'now':
      return `Odds at planting with this season’s weather: over your limit at ${above(oddsLimit)} ${of}.`;
    case 'normal':
      return `Odds at planting in a normal year: over your limit at ${above(oddsLimit)} ${of}.`;
    case 'short':
      return `On the label date the odds stood over your limit in more than half of the years at ${above(0.5)} ${of}.`;
    case 'summer':
      return `June to August brought less than three quarters of normal rain at ${below(0.75)} ${of}.`;
    case 'warm':
      return `Less than three quarters of the normal warm rain fell so far at ${below(0.75)} ${of}.`;
  }
}

/** A station’s numbers, read out. */
export function stationInWords(row: RegionRow, units: Units, dates: DateWords): string {
  const { figures, name, rainPercent, firstDate, lastDate } = row;
  const record = `Record ${firstDate.slice(0, 4)} to ${lastDate.slice(0, 4)}, rain on ${Math.floor(rainPercent)} of 100 days.`;
  if (figures === null) return `${name}: ${row.reason} ${record}`;
  const { oddsNow, oddsNormal, oddsRange, labelTooShortShare, clearDate, daysAfterLabel, years } = figures;
  const range = `between ${Math.round(oddsRange.low * 20)} and ${Math.round(oddsRange.high * 20)}`;
  const parts = [
    oddsNow === null
      ? `${sayOdds(oddsNormal)} in a normal year (${range})${row.notNow === null ? '' : `; not of this season: ${row.notNow}`}`
      : `${sayOdds(oddsNow)} this season (${range}), ${sayOdds(oddsNormal)} in a normal year`,
    `the label’s interval was not enough in ${Math.round(labelTooShortShare * years)} of ${years} years`,
    clearDate === null
      ? 'no clear date within the search'
      : `clear ${dates.full(clearDate)}${daysAfterLabel ? `, ${daysAfterLabel} days after the label date` : ''}`,
  ];
  const rain = [
    figures.summerRain && againstNormal('June to August', figures.summerRain, units),
    figures.warmRain && againstNormal('Warm rain since spraying', figures.warmRain, units),
    ...figures.counted.map(
      ({ region, sumMm, thresholdMm, under, complete }) =>
        `A published rule for ${region} counts ${rainText(sumMm, units)}${complete ? '' : ' so far'} against ${rainText(thresholdMm, units)}${under === null ? '' : under ? ', under it' : ', not under it'}.`,
    ),
  ].filter(Boolean);
  return `${name}: ${parts.join('; ')}. ${rain.join(' ')} ${record}`;
}

const againstNormal = (
  what: string,
  { mm, percentOfNormal }: { mm: number; percentOfNormal: number | null },
  units: Units,
): string =>
  `${what}: ${rainText(mm, units)}${percentOfNormal === null ? '' : `, ${Math.round(percentOfNormal)} % of normal`}.`;
