import pc from 'picocolors';
import type { Say } from '../app/say.ts';
import { count, sayLimit, sayOdds } from '../app/words.ts';
import type { Answer } from '../schema/answer.ts';
import { conditionLines } from './conditionText.ts';
import { modelLine } from './modelLine.ts';
import { yearStrip } from './yearStrip.ts';

/** How the answer is printed. */
export interface TextOptions {
  readonly say: Say;
  readonly colour: boolean;
}

const WIDTH = 78;

/** The printed answer: one sentence, a small table, a strip of the years, the cautions. */
export function answerText(answer: Answer, options: TextOptions): string {
  const { bold, dim } = pc.createColors(options.colour);
  const { weather, model } = answer;
  const record = `${weather.station.name} (${weather.station.id}), record ${weather.firstDate} to ${weather.lastDate}${
    weather.observedThrough
      ? `, observed through ${weather.observedThrough}`
      : ', planned from past years alone'
  }; ${weather.missingRainPercent.toFixed(1)} % of its rain days are missing.`;
  return [
    bold(wrap(answer.sentence)),
    wrap(answer.advice),
    '',
    ...datesTable(answer, options),
    '',
    ...thirdsTable(answer, options),
    ...zoneLines(answer, options),
    ...(answer.years.length > 0 ? ['', ...yearStrip(answer.years)] : []),
    ...reasonLines(answer),
    ...conditionLines(answer, options.say, wrap),
    '',
    ...answer.cautions.map(({ text }) => wrap(text, '- ', '  ')),
    '',
    dim(wrap(`Weather: ${record}`)),
    dim(modelLine(model)),
    '',
  ].join('\n');
}

/** Why, and what field evidence did. */
function reasonLines({ why, evidence }: Answer): string[] {
  const words = [...(why?.words ?? []), ...(evidence?.findings ?? []).map(({ text }) => text)];
  return words.length === 0 ? [] : ['', 'Why', ...words.map((text) => wrap(text, '- ', '  '))];
}

/** Parts of the field with another overlap. */
function zoneLines({ zones }: Answer, { say }: TextOptions): string[] {
  if (zones.length === 0) return [];
  return [
    '',
    'Parts of the field with another overlap',
    ...zones.map(({ name, overlapFactor, oddsAtPlanting, clearDate }) =>
      wrap(
        `${name} (${overlapFactor} times the dose): ${oddsAtPlanting === null ? 'no odds reckoned' : sayOdds(oddsAtPlanting)}, clear ${clearDate === null ? 'at no date found' : say.dates.full(clearDate)}`,
        '- ',
        '  ',
      ),
    ),
  ];
}

function datesTable(answer: Answer, { say }: TextOptions): string[] {
  const { interval, question } = answer.inputs;
  const percent = (odds: number) => `${(odds * 100).toFixed(odds < 0.1 ? 1 : 0)} %`;
  const range = answer.oddsRange;
  const rows: [string, string][] = [
    ['Label date', `${say.dates.full(answer.labelDate)}  (${interval.text}, ${interval.origin})`],
    [
      'Clear date',
      answer.clearDate === null
        ? `none at your limit of ${sayLimit(question.oddsLimit)}`
        : `${say.dates.full(answer.clearDate)}  (odds at or under ${sayLimit(question.oddsLimit)} from then on)`,
    ],
  ];
  if (answer.oddsAtPlanting !== null && range !== null && answer.oddsAtLabelDate !== null) {
    rows.push(
      [
        'Odds at planting',
        `${percent(answer.oddsAtPlanting)}  (${percent(range.low)} to ${percent(range.high)}, from ${count(range.years, 'year')} of weather only)`,
      ],
      ['Odds at label date', percent(answer.oddsAtLabelDate)],
    );
  }
  return rows.map(([name, value]) => `${name.padEnd(20)}${value}`);
}

function thirdsTable({ thirds }: Answer, { say }: TextOptions): string[] {
  if (thirds.length === 0) return [];
  const cells = (values: string[]) =>
    values.map((value, index) => value.padEnd([20, 18, 20, 0][index])).join('');
  return [
    cells(['Years by warm rain', 'Odds at planting', 'Clear date (median)', 'Warm rain (median)']),
    ...thirds.map(({ name, odds, clearDate, warmRainMm }) =>
      cells([
        `${name} third`,
        `${Math.round(odds * 20)} in 20 (${Math.round(odds * 100)} %)`,
        clearDate === null ? 'not reached' : say.dates.full(clearDate),
        say.water(warmRainMm),
      ]),
    ),
  ];
}

/** Breaks a text into lines of at most {@link WIDTH} columns. */
export function wrap(text: string, first = '', rest = ''): string {
  const lines: string[] = [];
  let line = first;
  for (const word of text.split(' ')) {
    const empty = line === first || line === rest;
    if (!empty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = rest + word;
    } else {
      line += empty ? word : ` ${word}`;
    }
  }
  return [...lines, line].join('\n');
}
