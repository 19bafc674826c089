import type { Command as Program } from 'commander';
import { batch } from '../../app/batch.ts';
import { batchTable } from '../../app/batchTable.ts';
import { fieldListTemplate, readFieldList } from '../../app/fieldList.ts';
import { csvOf } from '../../app/flatTable.ts';
import { InvalidInputError } from '../../errors.ts';
import { BATCH_COLUMNS } from '../../schema/batchColumns.ts';
import type { QuestionInput } from '../../schema/question.ts';
import type { CliDeps } from '../command.ts';
import { modelLine } from '../modelLine.ts';
import { workersOption } from '../optionValues.ts';
import { checkOutput, writeOutput } from '../outputFile.ts';
import { createProgressLine } from '../progressLine.ts';
import { addSeasonOptions, fieldsOf, readerOf, type SeasonFlags } from '../seasonOptions.ts';
import { textTable } from '../textTable.ts';
import { withWorkshop } from '../withWorkshop.ts';

interface BatchFlags extends SeasonFlags {
  template?: boolean;
  columns?: boolean;
  out?: string;
  workers?: number;
  json?: boolean;
}

/** `drywake batch`: a list of fields, answered and ranked. */
export function define(program: Program, deps: CliDeps): void {
  program.argument('[file]', 'CSV with one row for each field');
  addSeasonOptions(program);
  program
    .option('--template', 'print the head of such a file with one invented row, and do nothing else')
    .option('--columns', 'print what each column means, and do nothing else')
    .option('--out <file>', 'write to a file: .csv, .json or .parquet (default: CSV to the output)')
    .option('--workers <n>', 'worker threads; 0 for none (default: by the length of the list)', workersOption)
    .option('--json', 'print JSON, metric and unrounded')
    .addHelpText(
      'after',
      `
Columns that mean nothing here are kept; answers follow them, most area at risk first. A flag gives one value to all
rows that have none of their own. A row that cannot be answered says why and holds nothing up.

Examples:
  drywake batch --template > fields.csv
  drywake batch fields.csv --residual flumioxazin --out answers.csv
`,
    )
    .action((file: string | undefined, flags: BatchFlags) => run(file, flags, deps));
}

async function run(file: string | undefined, flags: BatchFlags, deps: CliDeps): Promise<void> {
  const { terminal } = deps;
  if (flags.template) return terminal.out(fieldListTemplate());
  if (flags.columns) {
    const lines = BATCH_COLUMNS.map(({ name, needed, description }) => [
      name,
      needed ? 'needed' : '',
      description,
    ]);
    return terminal.out(textTable([['column', '', 'meaning'], ...lines]));
  }
  if (file === undefined) {
    throw new InvalidInputError('FILE_NOT_GIVEN', 'There is no list of fields to look at.', {
      hint: 'Name a CSV file; "drywake batch --template" prints one to start from.',
    });
  }
  if (flags.out !== undefined) checkOutput(flags.out, ['json']);
  const list = readFieldList(await deps.readText(file), file);
  const shared = (await fieldsOf(flags, deps)) as Partial<QuestionInput>;
  const line = createProgressLine(terminal, 'fields answered');
  const result = await deps.untilInterrupted((signal) =>
    withWorkshop(deps, list.rows.length, flags.workers, async (workshop) => {
      const weather = await readerOf(flags, deps);
      const { catalogue, labels } = deps.answerDeps(weather);
      const watch = { signal, progress: line.show };
      return batch(list, shared, { version: deps.version, catalogue, weather, labels, workshop }, watch);
    }),
  );
  line.end();
  const columns = batchTable(list.columns, result.model, shared);
  if (flags.out !== undefined) {
    await writeOutput(flags.out, { columns, rows: result.rows, others: { json: () => result } }, deps);
  } else {
    terminal.out(flags.json ? `${JSON.stringify(result, null, 2)}\n` : csvOf(columns, result.rows));
  }
  terminal.err(
    `${result.answered} answered, ${result.refused} not; those say why in the last column.\n${modelLine(result.model)}\n`,
  );
  if (result.unknownColumns.length > 0) {
    terminal.err(`Kept without a meaning here: ${result.unknownColumns.join(', ')}.\n`);
  }
  for (const caution of result.cautions) terminal.err(`${caution}\n`);
}
