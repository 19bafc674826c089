import { Option, type Command as Program } from 'commander';
import type { FieldsDesk, Shelf } from '../app/fieldsDesk.ts';
import { importTable } from '../app/tables/importTable.ts';
import type { TableShape } from '../app/tables/tableShape.ts';
import { writeTable } from '../app/tables/writeTable.ts';
import { InvalidInputError } from '../errors.ts';
import type { TableImport } from '../schema/tableImport.ts';
import type { CliDeps } from './command.ts';
import { unitsOption } from './wordingOptions.ts';

/** What is particular to one kind of table. */
export interface TableCommandsOf<T extends { readonly id: string }> {
  /** The command above, such as "fields". */
  readonly nouns: string;
  readonly shape: TableShape<T>;
  shelf(desk: FieldsDesk): Shelf<T>;
}

interface ExportFlags {
  readonly units: 'us' | 'metric';
  readonly out?: string;
  readonly json?: boolean;
}

/** File to write instead of printing. */
export const outOption = (): Option =>
  new Option('--out <file>', 'write it into a new file instead of printing it');

/** Prints a text, or writes it into the file that was named. */
export async function give(text: string, out: string | undefined, deps: CliDeps): Promise<void> {
  if (out === undefined) return deps.terminal.out(text);
  await deps.writeNewText(out, text);
  deps.terminal.err(`Written: ${out}\n`);
}

/** Adds `import` and `export` of CSV tables below a command. */
export function defineTableCommands<T extends { readonly id: string }>(
  program: Program,
  deps: CliDeps,
  { nouns, shape, shelf }: TableCommandsOf<T>,
): void {
  program
    .command('import')
    .description(`keep the ${nouns} of a CSV table; rows at fault are told and stop no other`)
    .copyInheritedSettings(program)
    .argument('<file>', 'CSV file; “export” shows every column')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', `\nExample:\n  drywake ${nouns} import ${nouns}.csv\n`)
    .action(async (file: string, { json }: { json?: boolean }) => {
      const text = await deps.readText(file);
      const result = await deps.withDesk((desk) => importTable(text, shape, shelf(desk)));
      deps.terminal.out(json ? `${JSON.stringify(result, null, 2)}\n` : importText(result));
      if (result.faults.length === 0) return;
      throw new InvalidInputError('TABLE_FAULTS', `${file} has ${result.faults.length} at fault.`, {
        hint: 'Mend what is told above and import the file again; what is kept already is left as it is.',
      });
    });
  program
    .command('export')
    .description(`all ${nouns} as a CSV table`)
    .copyInheritedSettings(program)
    .addOption(unitsOption('the table'))
    .addOption(outOption())
    .option('--json', 'print the records as JSON, metric and unrounded')
    .addHelpText('after', `\nExample:\n  drywake ${nouns} export --out ${nouns}.csv\n`)
    .action(async ({ units, out, json }: ExportFlags) => {
      const { kept } = await deps.withDesk((desk) => shelf(desk).list());
      const records = kept.map(({ record }) => record);
      const text = json
        ? `${JSON.stringify({ [nouns]: records }, null, 2)}\n`
        : writeTable(records, shape, units);
      await give(text, out, deps);
    });
}

function importText({ saved, unchanged, faults }: TableImport): string {
  const lines = [
    ...saved.map(({ id, version, isNew }) => `${id}: ${isNew ? 'new' : `changed, now version ${version}`}`),
    ...unchanged.map((id) => `${id}: as it was`),
    ...faults.map(
      ({ line, column, message }) => `line ${line}${column === null ? '' : `, ${column}`}: ${message}`,
    ),
  ];
  return lines.length === 0 ? 'The table holds no rows.\n' : `${lines.join('\n')}\n`;
}
