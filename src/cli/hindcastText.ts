import type { Hindcast } from '../schema/hindcast.ts';
import { wrap } from './answerText.ts';
import { modelLine } from './modelLine.ts';
import { tallyLines } from './tallyText.ts';
import { textTable } from './textTable.ts';

/** A hindcast as printed: the finding, a line for each lead, the bands of odds, what it means. */
export function hindcastText({
  sentence,
  meaning,
  leads,
  overall,
  station,
  labelEntries,
  years,
  recorded,
  model,
}: Hindcast): string {
  const percent = (value: number) => `${Math.round(value * 100)} %`;
  const scores = textTable([
    ['days before', 'Brier', 'skill', 'known weather', ''],
    ...leads.map(({ leadDays, brier, skill, brierWithWeatherKnown, plan }) => [
      String(leadDays),
      brier.toFixed(4),
      skill === null ? '-' : skill.toFixed(2),
      brierWithWeatherKnown.toFixed(4),
      plan ? 'before spraying' : '',
    ]),
  ]);
  const bands = textTable([
    ['odds given', 'times', 'years', 'mean', 'harm came', '95 % of chance'],
    ...overall.bins.map(({ from, to, forecasts, years: different, meanOdds, observed, low, high }) => [
      `${percent(from)} to ${percent(to)}`,
      String(forecasts),
      String(different),
      percent(meanOdds),
      percent(observed),
      `${percent(low)} to ${percent(high)}`,
    ]),
  ]);
  const weather = `${station.invented ? 'Invented record' : 'Record'} of ${station.name}, ${years[0].year} to ${years[years.length - 1].year}.`;
  const labels =
    labelEntries.length === 0
      ? []
      : [wrap(`By your own label ${labelEntries.map(({ id, name }) => `${name} [${id}]`).join(' and ')}.`)];
  return `${[wrap(sentence), '', scores, bands, wrap(meaning), wrap(weather), ...labels, ...tallyLines(recorded), modelLine(model)].join('\n')}\n`;
}
