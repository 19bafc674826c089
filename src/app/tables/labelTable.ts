import { type LabelEntry, labelEntrySchema } from '../../schema/labelEntry.ts';
import { gramsPerHaFromOuncesPerAcre, ouncesPerAcreFromGramsPerHa } from '../../units.ts';
import { readLabelEntry } from '../labelBook.ts';
import type { Column } from './column.ts';
import type { TableShape } from './tableShape.ts';

/** Most actives of an entry. */
const MOST_ACTIVES = 6;

const activeColumns = (index: number): Column[] => {
  const name = `active_${index + 1}`;
  const path = `actives.${index}`;
  return [
    { header: name, path: `${path}.name`, kind: 'word' },
    {
      ...{ header: `${name}_g_per_ha`, path: `${path}.rateGramsPerHa`, kind: 'number' },
      us: {
        header: `${name}_oz_per_acre`,
        from: ouncesPerAcreFromGramsPerHa,
        toMetric: gramsPerHaFromOuncesPerAcre,
      },
    },
    { header: `${name}_half_life_days`, path: `${path}.halfLifeDays`, kind: 'number' },
  ];
};

/** Label entries as a table: one row a crop. */
export const LABEL_TABLE: TableShape<LabelEntry> = {
  schema: labelEntrySchema,
  idFrom: ['name'],
  judge: (entry) => void readLabelEntry(entry),
  head: [
    { header: 'id', path: 'id', kind: 'word' },
    { header: 'name', path: 'name', kind: 'text' },
    { header: 'label_version', path: 'labelVersion', kind: 'text' },
    { header: 'entered_on', path: 'enteredOn', kind: 'word' },
    { header: 'note', path: 'note', kind: 'text' },
    ...Array.from({ length: MOST_ACTIVES }, (_, index) => activeColumns(index)).flat(),
  ],
  lists: [
    {
      ...{ key: 'intervals', by: 'crop', numbered: null },
      columns: [
        { header: 'crop', path: 'crop', kind: 'word' },
        { header: 'interval', path: 'interval', kind: 'word' },
        { header: 'food_feed_interval', path: 'foodFeedInterval', kind: 'word' },
        { header: 'conditions', path: 'conditions', kind: 'text' },
        { header: 'clauses_json', path: 'clauses', kind: 'json' },
      ],
    },
  ],
};
