import type { Sheet, SheetPicture } from '../schema/sheet.ts';
import type { Wording } from '../schema/wording.ts';
import { sayIn } from './say.ts';

const BARS = ['·', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];

/**
 * A sheet as Markdown; the picture is a strip of bars.
 * @param wording as the sheet was asked for
 * @example sheetMarkdown(await sheet({ ...demoQuestion, interval: '4 months' }, deps)).split('\n')[0] // '# flumioxazin before lentil'
 */
export function sheetMarkdown(sheet: Sheet, wording: Wording = {}): string {
  const lines = (items: readonly { label: string; value: string }[]) =>
    items.map(({ label, value }) => `- **${escaped(label)}:** ${escaped(value)}`);
  const section = (title: string, body: readonly string[]) =>
    body.length === 0 ? [] : ['', `## ${title}`, '', ...body];
  return [
    `# ${escaped(sheet.title)}`,
    ...fieldLines(sheet.field),
    ...(sheet.invented === null ? [] : ['', `*${escaped(sheet.invented)}*`]),
    '',
    `**${escaped(sheet.sentence)}**`,
    '',
    escaped(sheet.advice),
    '',
    escaped(sheet.floor),
    ...section('Dates and odds', lines(sheet.dates)),
    ...section('Odds by planting date', sheet.picture === null ? [] : pictureLines(sheet.picture)),
    ...section('Dry, middle and wet years', lines(sheet.thirds)),
    ...section('Parts of the field with another overlap', lines(sheet.zones)),
    ...section('Why', bullets(sheet.reasons)),
    ...section('What the label ties its interval to', lines(sheet.conditions)),
    ...section('Take care', bullets(sheet.cautions)),
    ...section('What this rests on', [
      ...lines(sheet.inputs),
      `- **Weather:** ${escaped(sheet.weather)}`,
      `- **Weather data up to:** ${sayIn(wording).dates.full(sheet.dataDate)}`,
      `- **Model:** ${escaped(sheet.model)}`,
    ]),
    '',
  ].join('\n');
}

function fieldLines(field: Sheet['field']): string[] {
  if (field === null) return [];
  const named = [field.farm && `Farm: ${field.farm}`, `Field: ${field.name}`, field.area];
  return ['', escaped(named.filter(Boolean).join('; '))];
}

const bullets = (texts: readonly string[]): string[] => texts.map((text) => `- ${escaped(text)}`);

/** Text that Markdown shows as it is. */
const escaped = (text: string): string => text.replace(/[\\`*_[\]<>#|]/g, '\\$&').replace(/\s+/g, ' ');

function pictureLines({ points, plantOn, labelDate, clearDate, caption }: SheetPicture): string[] {
  const bars = points.map(({ odds }) => BARS[Math.round(odds * (BARS.length - 1))]).join('');
  const marks = points.map(() => ' ');
  const put = (date: string | null, mark: string) => {
    if (date === null) return;
    const index = points.findIndex((point) => point.date >= date);
    if (index >= 0) marks[index] = marks[index] === ' ' ? mark : '*';
  };
  put(labelDate, 'L');
  put(plantOn, 'P');
  put(clearDate, 'C');
  const first = points[0].date;
  const last = points[points.length - 1].date;
  return [
    '```',
    bars,
    marks.join('').trimEnd(),
    `${first}${' '.repeat(Math.max(1, bars.length - first.length - last.length))}${last}`,
    '```',
    '',
    `${escaped(caption)} L is the label date, P planting, C the clear date, \\* two of them; a dot is no risk, a full bar certain harm.`,
  ];
}
