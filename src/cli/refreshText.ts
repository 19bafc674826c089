import { count } from '../app/words.ts';
import type { Refresh } from '../schema/fieldAnswer.ts';
import { modelLine } from './modelLine.ts';

/** What a refresh brought, largest change first. */
export function refreshText({ weather, answered, changes, problems, model }: Refresh): string {
  const lines = [
    weather.text,
    ...weather.stations.map(
      ({ id, lastDate, text }) => `  ${id}: ${text}${lastDate === null ? '' : ` Record up to ${lastDate}.`}`,
    ),
    `${count(answered, 'planned crop')} answered; ${
      changes.length === 0
        ? 'nothing worth telling has changed.'
        : `${count(changes.length, 'change')}, largest first:`
    }`,
    ...changes.map(({ text }) => `  ${text}`),
    ...(problems.length === 0 ? [] : ['Without an answer:']),
    ...problems.map(
      ({ fieldId, planId, problem }) => `  ${fieldId}, ${planId}: ${problem.message} ${problem.hint}`,
    ),
    modelLine(model),
  ];
  return `${lines.join('\n')}\n`;
}
