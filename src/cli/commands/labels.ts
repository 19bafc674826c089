import type { Command as Program } from 'commander';
import type { Kept } from '../../app/fieldsDesk.ts';
import { labelUnknown } from '../../app/labelBook.ts';
import { LABEL_TABLE } from '../../app/tables/labelTable.ts';
import type { LabelEntry } from '../../schema/labelEntry.ts';
import type { CliDeps } from '../command.ts';
import { labelsText, labelText } from '../labelsText.ts';
import { defineTableCommands } from '../tableCommands.ts';

interface Flags {
  readonly json?: boolean;
}

/** `drywake labels list | show | import | export`. */
export function define(program: Program, deps: CliDeps): void {
  const say = (json: boolean | undefined, result: unknown, text: string) =>
    deps.terminal.out(json ? `${JSON.stringify(result, null, 2)}\n` : text);
  const list = () => deps.withDesk((desk) => desk.labels.list());
  program.addHelpText('after', '\nExample:\n  drywake labels list\n');
  program
    .command('list')
    .description('all label entries, and those that were removed')
    .copyInheritedSettings(program)
    .option('--json', 'print the result as JSON')
    .addHelpText('after', '\nExample:\n  drywake labels list\n')
    .action(async ({ json }: Flags) => {
      const { kept, removed } = await list();
      const labels = { labels: kept.map(entryOf), removed: [...removed] };
      say(json, labels, labelsText(labels));
    });
  program
    .command('show')
    .description('one label entry with its actives, intervals and conditions')
    .copyInheritedSettings(program)
    .argument('<id>', 'id of the entry')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', '\nExample:\n  drywake labels show shed-one\n')
    .action(async (id: string, { json }: Flags) => {
      const { kept } = await list();
      const found = kept.find(({ record }) => record.id === id);
      if (found === undefined)
        throw labelUnknown(
          id,
          kept.map(({ record }) => record.id),
        );
      say(json, entryOf(found), labelText(entryOf(found)));
    });
  defineTableCommands(program, deps, { nouns: 'labels', shape: LABEL_TABLE, shelf: (desk) => desk.labels });
}

const entryOf = ({ record, ...rest }: Kept<LabelEntry>) => ({ ...rest, entry: record });
