import type { FieldAnswer } from '../schema/fieldAnswer.ts';
import type { FieldList, FieldRecord, StoredField } from '../schema/fieldRecord.ts';
import type { Removed } from '../schema/recordId.ts';
import type { ApplicationRecord } from '../schema/restrictedUse.ts';
import { acresFromHectares, inchesFromMm } from '../units.ts';
import { modelLine } from './modelLine.ts';
import { textTable } from './textTable.ts';

export type Units = 'us' | 'metric';

/** All fields, a line each, and what was removed. */
export function fieldsText({ fields, removed }: FieldList, units: Units): string {
  if (fields.length === 0) return `No field is kept yet.\n${removedText(removed, 'fields')}`;
  const rows = fields.map(({ version, record }) => {
    const { id, farm, name, areaHa, station, treatments, plans } = record;
    const [next] = [...plans].sort((a, b) => (a.plantOn < b.plantOn ? -1 : 1));
    return [
      ...[id, farm, name, areaHa === null ? '' : sayArea(areaHa, units), station ?? ''],
      treatments
        .map(({ appliedOn }) => appliedOn)
        .sort()
        .at(-1) ?? '',
      next === undefined ? '' : `${next.crop} ${next.plantOn}`,
      String(version),
    ];
  });
  const head = ['Id', 'Farm', 'Field', 'Area', 'Station', 'Last sprayed', 'Next planned', 'Version'];
  return `${textTable([head, ...rows])}${removedText(removed, 'fields')}`;
}

/** Removed records that undo brings back; nothing where there is none. */
export const removedText = (removed: readonly Removed[], command: string): string =>
  removed.length === 0
    ? ''
    : `\nRemoved; “drywake ${command} undo ID” brings one back:\n${removed
        .map(({ id, name }) => `  ${id}  ${name}\n`)
        .join('')}`;

/** One field in lines, with the answer for each planned crop. */
export function fieldText(
  { version, record }: StoredField,
  answers: readonly FieldAnswer[],
  units: Units,
): string {
  const lines = [
    `${record.farm === '' ? '' : `${record.farm}, `}${record.name} [${record.id}, version ${version}]`,
    ...factLines(record, units),
    ...section('Treatments', record.treatments.map(treatmentLine)),
    ...section('Own gauge', [waterLine(record.gauge, units)].filter(Boolean)),
    ...section('Irrigation', [waterLine(record.irrigation, units)].filter(Boolean)),
    ...section(
      'Tillage',
      record.tillage.map(({ date, note }) => `${date}  ${note}`),
    ),
    ...section(
      'Outcomes',
      record.outcomes.map(
        ({ on, crop, state, injuredPercent }) =>
          `${on}  ${crop}: ${state}${injuredPercent === undefined ? '' : `, ${injuredPercent} %`}`,
      ),
    ),
    ...section(
      'Planned crops',
      record.plans.flatMap(({ id, crop, plantOn }) => [
        `${crop} on ${plantOn} [${id}]`,
        ...answerLines(answers.find(({ planId }) => planId === id)),
      ]),
    ),
    ...(record.note === '' ? [] : ['', record.note]),
    ...answers.slice(0, 1).flatMap(({ model }) => ['', modelLine(model)]),
  ];
  return `${lines.join('\n')}\n`;
}

function factLines(record: FieldRecord, units: Units): string[] {
  const { areaHa, station, place, soilClass, sandPercent, clayPercent, soilPh, phNote } = record;
  const soil =
    sandPercent === undefined
      ? (soilClass ?? 'loam, taken since none is given')
      : `${sandPercent} % sand, ${clayPercent} % clay`;
  return [
    areaHa === null ? 'Area not given' : `Area ${sayArea(areaHa, units)}`,
    `Station ${station ?? 'not chosen yet'}${place === null ? '' : `; field at ${place.latitudeDeg}, ${place.longitudeDeg}`}`,
    `Soil ${soil}; organic matter ${record.organicMatterPercent === undefined ? 'not given' : `${record.organicMatterPercent} %`}; pH ${soilPh ?? 'not given'}${
      phNote === '' ? '' : ` (${phNote})`
    }; ${Math.round(record.coverFraction * 100)} % covered`,
  ];
}

const section = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];

const treatmentLine = (one: FieldRecord['treatments'][number]): string =>
  [
    `${one.appliedOn}  ${[one.residual, one.labelEntry && `label entry ${one.labelEntry}`].filter(Boolean).join(', ')}`,
    `${Math.round(one.rateFraction * 100)} % of the top rate`,
    ...(one.overlapFactor === 1 ? [] : [`overlap ${one.overlapFactor}`]),
    ...(one.canopyFraction === 0 ? [] : [`${Math.round(one.canopyFraction * 100)} % caught by leaves`]),
    ...(one.growthStage === undefined
      ? []
      : [`over ${one.growthStage.plants} at BBCH ${one.growthStage.bbch}`]),
    ...one.intervals.map(({ crop, interval }) => `label: ${interval} before ${crop}`),
    ...(one.interval === undefined ? [] : [`label: ${one.interval}`]),
    ...one.zones.map(({ name, overlapFactor }) => `${name} ${overlapFactor} times`),
    `[${one.id}]`,
  ].join('; ');

function waterLine(entries: readonly { readonly date: string; readonly mm: number }[], units: Units): string {
  if (entries.length === 0) return '';
  const total = entries.reduce((sum, { mm }) => sum + mm, 0);
  const amount = units === 'us' ? `${inchesFromMm(total).toFixed(2)} in` : `${total.toFixed(1)} mm`;
  const days = entries.map(({ date }) => date).sort();
  return `${amount} on ${entries.length} ${entries.length === 1 ? 'day' : 'days'}, ${days[0]} to ${days.at(-1)}`;
}

function answerLines(answer: FieldAnswer | undefined): string[] {
  if (answer === undefined) return [];
  const { problem, sentence, labelDate, clearDate } = answer;
  if (problem !== undefined) return [`  ${problem.message} ${problem.hint}`];
  return [
    `  ${sentence}`,
    `  Label date ${labelDate}; clear date ${clearDate ?? 'none within the time looked at'}`,
  ];
}

const sayArea = (areaHa: number, units: Units): string =>
  units === 'us' ? `${acresFromHectares(areaHa).toFixed(1)} acres` : `${areaHa.toFixed(1)} ha`;

/** The record of a restricted-use application as a page of text. */
export function applicationRecordText({ field, lines, missing, notes }: ApplicationRecord): string {
  const width = Math.max(...lines.map(({ label }) => label.length));
  const shown = lines.filter(({ required, value }) => required || value !== null);
  return [
    'Record of a restricted-use pesticide application',
    field,
    '',
    ...shown.map(({ label, value }) => `${label.padEnd(width)}  ${value ?? '____________________'}`),
    '',
    missing.length === 0
      ? 'Every line that the federal record asks for is filled in.'
      : `Still missing: ${missing.join('; ')}.`,
    ...notes,
    '',
  ].join('\n');
}
