import type { KeptLabel, LabelList } from '../schema/labelEntry.ts';
import { removedText } from './fieldsText.ts';
import { textTable } from './textTable.ts';

/** All label entries, a line each, and what was removed. */
export function labelsText({ labels, removed }: LabelList): string {
  if (labels.length === 0) return `No label entry is kept yet.\n${removedText(removed, 'labels')}`;
  const rows = labels.map(({ version, entry: { id, name, actives, intervals, labelVersion, enteredOn } }) => [
    ...[id, name, actives.map((one) => one.name).join(' + '), String(intervals.length)],
    ...[labelVersion, enteredOn, String(version)],
  ]);
  const head = ['Id', 'Name', 'Actives', 'Crops', 'Label version', 'Entered', 'Version'];
  return `${textTable([head, ...rows])}${removedText(removed, 'labels')}`;
}

/** One label entry in lines. */
export function labelText({ version, entry }: KeptLabel): string {
  const lines = [
    `${entry.name} [${entry.id}, version ${version}]`,
    `Label ${entry.labelVersion}, entered ${entry.enteredOn}`,
    ...entry.actives.map(
      ({ name, rateGramsPerHa, halfLifeDays }) =>
        `  ${name}${rateGramsPerHa === undefined ? '' : `, ${rateGramsPerHa} g/ha at the top rate`}${
          halfLifeDays === undefined ? '' : `, half-life ${halfLifeDays} days`
        }`,
    ),
    'Rotation intervals',
    ...entry.intervals.map(
      ({ crop, interval, foodFeedInterval, conditions, clauses }) =>
        `  ${crop}: ${interval}${foodFeedInterval === undefined ? '' : `, ${foodFeedInterval} for food and feed`}${conditions === '' ? '' : ` (${conditions})`}${
          clauses.length === 0 ? '' : `; judged conditions: ${clauses.map(({ kind }) => kind).join(', ')}`
        }`,
    ),
    ...(entry.note === '' ? [] : [entry.note]),
  ];
  return `${lines.join('\n')}\n`;
}
