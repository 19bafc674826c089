import { FIELD_TABLE } from '../../src/app/tables/fieldTable.ts';
import { LABEL_TABLE } from '../../src/app/tables/labelTable.ts';
import type { TableShape } from '../../src/app/tables/tableShape.ts';
import { createApp } from '../../src/http/createApp.ts';
import { type Shape, typeWords } from '../../src/http/shapes.ts';
import { BATCH_COLUMNS } from '../../src/schema/batchColumns.ts';
import { noOutside } from '../http/noOutside.ts';
import { COMMON_FIELDS } from './commonFields.ts';

/** The parts of the interface's own document that the dictionary shows. */
export interface InterfaceDocument {
  readonly paths: Record<string, Record<string, { readonly summary?: string }>>;
  readonly components: { readonly schemas: Record<string, Shape> };
}

export async function interfaceDocument(): Promise<InterfaceDocument> {
  const app = createApp({ ...noOutside, version: '0', pageFolder: null, log: () => undefined } as never);
  const response = await app.request('http://localhost/api/openapi.json');
  return (await response.json()) as InterfaceDocument;
}

/** One field of a shape, with the fields of what has no name of its own below it. */
export interface DictionaryRow {
  readonly field: string;
  readonly type: string;
  readonly unit: string;
  readonly given: string;
  readonly meaning: string;
}

const inner = (shape: Shape): Shape | null => {
  if (shape.properties) return shape;
  if (shape.items) return inner(shape.items);
  return shape.anyOf?.map(inner).find((one) => one !== null) ?? null;
};

const isList = (shape: Shape): boolean => shape.items !== undefined || (shape.anyOf ?? []).some(isList);

/** The words of a field: its own, else those that go with its name. */
const meaningOf = (name: string, { description }: Shape): string => description ?? COMMON_FIELDS[name] ?? '';

/** Every field of a shape, nested ones by their path. */
export function rowsOf(shape: Shape, path = ''): DictionaryRow[] {
  return Object.entries(shape.properties ?? {}).flatMap(([name, field]) => {
    const below = inner(field);
    const optional = shape.required?.includes(name) ? '' : 'optional';
    const standard = field.default === undefined ? optional : `default ${JSON.stringify(field.default)}`;
    const row = {
      field: `${path}${name}`,
      type: typeWords(field),
      unit: field.unit ?? '',
      given: standard,
      meaning: meaningOf(name, field),
    };
    return [row, ...(below ? rowsOf(below, `${path}${name}${isList(field) ? '[]' : ''}.`) : [])];
  });
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;

function shapeText(name: string, shape: Shape): string[] {
  const rows = rowsOf(shape);
  if (rows.length === 0) return [];
  return [
    `### ${name}`,
    '',
    ...(shape.description ? [`${shape.description}.`, ''] : []),
    '| field | type | unit | given | meaning |',
    '| --- | --- | --- | --- | --- |',
    ...rows.map(({ field, type, unit, given, meaning }) =>
      line([`\`${field}\``, type, unit, given, meaning]),
    ),
    '',
  ];
}

const tableText = <T extends { readonly id: string }>(
  name: string,
  { head, lists }: TableShape<T>,
): string[] => [
  `### ${name}`,
  '',
  '| column | in US units | holds | field |',
  '| --- | --- | --- | --- |',
  ...[...head, ...lists.flatMap(({ columns }) => columns)].map(({ header, us, kind, path }) =>
    line([`\`${header}\``, us ? `\`${us.header}\`` : '', kind, `\`${path}\``]),
  ),
  '',
];

/** The whole dictionary, as the guide holds it. */
export const dictionary = ({ paths, components }: InterfaceDocument): string =>
  [
    '# Data dictionary',
    '',
    'Made from the schemas that the program itself judges by; a test fails where this page and the schemas differ. Metric',
    'units, dates `YYYY-MM-DD`, shares from 0 to 1, `null` for what is not known or does not apply. The columns of the',
    "catalogue's own files stand in [the catalogue's data](../../data/README.md).",
    '',
    '## Routes of the interface',
    '',
    '| route | gives |',
    '| --- | --- |',
    ...Object.entries(paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { summary = '' }]) =>
        line([`\`${method.toUpperCase()} ${path}\``, summary]),
      ),
    ),
    '',
    '## Shapes of the interface',
    '',
    'What `--json` prints and the interface sends and takes.',
    '',
    ...Object.entries(components.schemas)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .flatMap(([name, shape]) => shapeText(name, shape)),
    '## Tables',
    '',
    '### A list of fields for `batch`',
    '',
    '| column | needed | meaning |',
    '| --- | --- | --- |',
    ...BATCH_COLUMNS.map(({ name, needed, description }) =>
      line([`\`${name}\``, needed ? 'needed' : '', description]),
    ),
    '',
    ...tableText('Kept fields', FIELD_TABLE),
    ...tableText('Own label entries', LABEL_TABLE),
  ]
    .join('\n')
    .trimEnd()
    .concat('\n');
