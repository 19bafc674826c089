import { readdirSync, readFileSync } from 'node:fs';
import { from } from 'arquero';
import { caseFileSchema, publishedValues } from '../test/published/caseSchema.ts';
import { REGISTRY } from '../test/published/registry.ts';
import { type Notebook, words } from './kit/notebook.ts';
import { sayNumber } from './kit/say.ts';

const FOLDER = new URL('../test/published/', import.meta.url);

export interface CheckRow {
  readonly file: string;
  readonly about: string;
  readonly source: string;
  readonly id: string;
  readonly quantity: string;
  readonly unit: string;
  readonly published: number;
  readonly computed: number;
  readonly difference: number;
  readonly tolerance: number;
  readonly mark: string;
}

/** Every published value with what the program computes for it, computed now. */
export function checkRows(): CheckRow[] {
  const names = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
  return names.flatMap((file) => {
    const { about, source, cases } = caseFileSchema.parse(
      JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')),
    );
    const { title, publisher, year, place } = source;
    return cases.flatMap((one) => {
      const outputs = REGISTRY[one.equation](one.inputs);
      return publishedValues(one).map(({ quantity, index, published, tolerance = 0, unit = '' }) => {
        const output = outputs[quantity];
        const computed = Array.isArray(output) ? output[index ?? 0] : output;
        return {
          file,
          about,
          source: `${title}. ${publisher}${year === null ? '' : `, ${year}`}; ${place}`,
          id: one.id,
          quantity: index === null ? quantity : `${quantity} ${index + 1}`,
          unit,
          published,
          computed,
          difference: computed - published,
          tolerance,
          mark: one.mark,
        };
      });
    });
  });
}

export const publishedChecks: Notebook = {
  name: 'published-checks',
  title: 'Does the model compute what was published?',
  async cells() {
    const rows = checkRows();
    const over = rows.filter(({ difference, tolerance }) => Math.abs(difference) > tolerance);
    const files = [...new Set(rows.map(({ file }) => file))];
    return [
      words(
        `Every equation of the model that has a published number is computed here and set beside it: ${rows.length} values, ${rows.length - over.length} of them within the tolerance that was written beside the number before the program was run, which as a rule is half the last digit printed.`,
      ),
      ...files.flatMap((file) => {
        const own = rows.filter((row) => row.file === file);
        const [{ about, source }] = own;
        return [
          words(`Source: ${source}.`, about.replace(/\.$/, '')),
          {
            kind: 'table' as const,
            caption: `${own.length} values; largest difference ${sayNumber(Math.max(...own.map(({ difference }) => Math.abs(difference))))}.`,
            table: from(own),
            columns: {
              id: { head: 'Case' },
              quantity: { head: 'Quantity' },
              unit: { head: 'Unit' },
              published: { head: 'Published', isNumber: true, say: sayNumber },
              computed: { head: 'Computed', isNumber: true, say: sayNumber },
              difference: {
                head: 'Difference',
                isNumber: true,
                say: (value: number) => value.toExponential(1),
              },
              tolerance: { head: 'Allowed', isNumber: true, say: sayNumber },
              mark: { head: 'How known' },
            },
          },
        ];
      }),
    ];
  },
};
