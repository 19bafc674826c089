import type { Say } from '../app/say.ts';
import type {
  ActiveView,
  CatalogueList,
  CropInterval,
  Figure,
  IntervalRowView,
} from '../schema/catalogueView.ts';
import { textTable } from './textTable.ts';

const COUNTRY: Readonly<Record<ActiveView['country'], string>> = { US: 'the United States', CA: 'Canada' };

/** Tables of actives, of crops, or of both. */
export function catalogueListText(
  { actives, crops }: CatalogueList,
  parts: { readonly actives: boolean; readonly crops: boolean },
): string {
  const activeTable = textTable([
    ['Active', 'Group', 'Half-life [d]', 'Mark', 'Interval rows', 'Seen'],
    ...actives.map(({ name, group, halfLifeDays, halfLifeMark, intervalRows, rowsSeen }) => [
      name,
      String(group),
      halfLifeDays === null ? 'none' : String(halfLifeDays),
      halfLifeMark ?? '',
      String(intervalRows),
      String(rowsSeen),
    ]),
  ]);
  const cropTable = textTable([
    ['Crop', 'Kind', 'Hurt by groups', 'Grazed', 'Cover', 'Botanical name'],
    ...crops.map(({ name, kind, sensitiveGroups, grazedOrHayed, coverCrop, botanicalName }) => [
      name,
      kind,
      sensitiveGroups.join(', '),
      grazedOrHayed ? 'yes' : 'no',
      coverCrop ? 'yes' : 'no',
      botanicalName,
    ]),
  ]);
  return [...(parts.actives ? [activeTable] : []), ...(parts.crops ? [cropTable] : [])].join('\n');
}

/** One active in lines: figures, crops by interval, the rows of one crop, sources; rates in the units asked for. */
export function activeText(view: ActiveView, say: Say): string {
  const blocks = [
    `${view.name}, mode-of-action group ${view.group}`,
    view.figures.map((figure) => figureLine(figure, say)).join('\n'),
    ['Mind:', ...view.cautions.map((text) => `  ${text}`)].join('\n'),
    [
      `Rotation intervals for a field in ${COUNTRY[view.country]} (your own label governs):`,
      ...view.crops.map(cropLines),
    ].join('\n'),
    ...(view.rows.length > 0 ? [['Rows behind it:', ...view.rows.map(rowLines)].join('\n')] : []),
    ['Sources:', ...view.sources.map(({ id, reference, seen }) => `  ${id}  ${reference} [${seen}]`)].join(
      '\n',
    ),
  ];
  return `${blocks.join('\n\n')}\n`;
}

function figureLine({ name, value, unit, mark, sources }: Figure, say: Say): string {
  const said = unit === 'g/ha' ? say.ratesIn(String(value)) : `${value}${unit ? ` ${unit}` : ''}`;
  return `${name}: ${said} (${mark}, ${sources.join(', ')})`;
}

function cropLines({
  crop,
  interval,
  atLeast,
  fromMemory,
  bioassay,
  fallBack,
  ...more
}: CropInterval): string {
  const marks = [
    ...(atLeast ? ['or more'] : []),
    ...(fromMemory ? ['from memory'] : []),
    ...(bioassay ? ['field bioassay asked for'] : []),
  ];
  const head = `  ${crop}: ${interval ?? 'no label interval known'}${marks.length > 0 ? ` (${marks.join('; ')})` : ''}`;
  const lines = [
    ...(fallBack ? [fallBack] : []),
    ...(more.disagreement ? [more.disagreement] : []),
    ...more.beside,
  ];
  return [head, ...lines.map((line) => `    ${line}`)].join('\n');
}

function rowLines(row: IntervalRowView): string {
  const mix = row.partners.length > 0 ? `, ready mix with ${row.partners.join(' and ')}` : '';
  const head = `  row ${row.rowId}, ${row.kind}, ${row.cropOnSource}: ${row.interval ?? 'no length'}${mix} (${row.region}, ${row.country}; ${row.mark}, ${row.sources.join(', ')})`;
  const more = [...row.conditions, ...(row.note ? [row.note] : [])];
  return [head, ...more.map((line) => `    ${line}`)].join('\n');
}
