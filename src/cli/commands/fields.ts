import type { Command as Program } from 'commander';
import type { FieldsDesk } from '../../app/fieldsDesk.ts';
import { recordUnknown } from '../../app/recordUnknown.ts';
import { readBackup } from '../../app/restoreBackup.ts';
import { FIELD_TABLE } from '../../app/tables/fieldTable.ts';
import { InvalidInputError } from '../../errors.ts';
import type { CliDeps } from '../command.ts';
import { applicationRecordText, fieldsText, fieldText, type Units } from '../fieldsText.ts';
import { defineTableCommands, give, outOption } from '../tableCommands.ts';
import { dateStyleOption, unitsOption, type WordingFlags, wordingOf } from '../wordingOptions.ts';

interface Flags extends WordingFlags {
  readonly json?: boolean;
  readonly units: Units;
}

/** `drywake fields list | show | import | export | backup | restore | undo | record`. */
export function define(program: Program, deps: CliDeps): void {
  program.addHelpText('after', '\nExample:\n  drywake fields list\n');
  const sub = (name: string, summary: string, example: string) =>
    program
      .command(name)
      .description(summary)
      .copyInheritedSettings(program)
      .option('--json', 'print the result as JSON')
      .addHelpText('after', `\nExample:\n  drywake fields ${example}\n`);
  const say = (json: boolean | undefined, result: unknown, text: () => string) =>
    deps.terminal.out(json ? `${JSON.stringify(result, null, 2)}\n` : text());

  sub('list', 'all fields, and those that were removed', 'list')
    .addOption(unitsOption('the table'))
    .action(async ({ json, units }: Flags) => {
      const { kept, removed } = await deps.withDesk((desk) => desk.fields.list());
      const list = { fields: [...kept], removed: [...removed] };
      say(json, list, () => fieldsText(list, units));
    });
  sub('show', 'one field, with the answer for each planned crop', 'show home-quarter')
    .argument('<id>', 'id of the field')
    .addOption(unitsOption('what is printed'))
    .addOption(dateStyleOption())
    .action(async (id: string, { json, units, dateStyle }: Flags) => {
      const shown = await deps.withDesk(async (desk) => ({
        field: await keptField(desk, id),
        answers: await desk.answers(id, wordingOf({ units, dateStyle })),
      }));
      say(json, shown, () => fieldText(shown.field, shown.answers, units));
    });
  defineTableCommands(program, deps, { nouns: 'fields', shape: FIELD_TABLE, shelf: (desk) => desk.fields });
  program
    .command('backup')
    .description(
      'everything that is kept (fields, label entries, every version, last answers) as one JSON text',
    )
    .copyInheritedSettings(program)
    .addOption(outOption())
    .option('--json', 'the same: a backup is JSON')
    .addHelpText('after', '\nExample:\n  drywake fields backup --out drywake-backup.json\n')
    .action(async ({ out }: { out?: string }) => {
      const backup = await deps.withDesk((desk) => desk.backup());
      await give(`${JSON.stringify(backup)}\n`, out, deps);
    });
  sub(
    'restore',
    'put a backup in the place of everything that is kept',
    'restore drywake-backup.json --replace',
  )
    .argument('<file>', 'file that “backup” has written')
    .option('--replace', 'say that replacing everything is meant')
    .action(async (file: string, { json, replace }: Flags & { replace?: boolean }) => {
      const backup = readBackup(await deps.readText(file));
      if (!replace) throw notMeant(file);
      const restored = await deps.withDesk((desk) => desk.restore(backup));
      say(json, restored, () => {
        const kept = restored.keptAs === null ? '' : ` What was there before is kept as ${restored.keptAs}.`;
        return `Restored: ${restored.fields} fields, ${restored.labels} label entries.${kept}\n`;
      });
    });
  sub(
    'undo',
    'take the last change of a field back, a removal too; a second time brings it again',
    'undo home-quarter',
  )
    .argument('<id>', 'id of the field')
    .action(async (id: string, { json }: Flags) => {
      const undone = await deps.withDesk(async (desk) => {
        const { kept, removed } = await desk.fields.list();
        const version =
          kept.find(({ record }) => record.id === id)?.version ??
          removed.find((one) => one.id === id)?.version;
        if (version === undefined) throw await unknownField(desk, id);
        return desk.fields.undo(id, version);
      });
      say(json, undone, () => `${id}: now version ${undone.version}${undone.removed ? ', removed' : ''}.\n`);
    });
  sub(
    'record',
    'the federal record of a restricted-use application, with what is missing of it',
    'record home-quarter',
  )
    .argument('<id>', 'id of the field')
    .argument('[treatment]', 'id of the treatment (default: the latest)')
    .addOption(unitsOption('what is printed'))
    .addOption(dateStyleOption())
    .action(async (id: string, treatment: string | undefined, { json, units, dateStyle }: Flags) => {
      const record = await deps.withDesk(async (desk) => {
        const { treatments } = (await keptField(desk, id)).record;
        const latest = [...treatments].sort((a, b) => (a.appliedOn < b.appliedOn ? -1 : 1)).at(-1);
        return desk.applicationRecord(id, treatment ?? latest?.id ?? 'none', wordingOf({ units, dateStyle }));
      });
      say(json, record, () => applicationRecordText(record));
    });
}

async function keptField(desk: FieldsDesk, id: string) {
  const kept = await desk.fields.get(id);
  if (kept === null) throw await unknownField(desk, id);
  return kept;
}

async function unknownField(desk: FieldsDesk, id: string) {
  const all = (await desk.fields.list()).kept.map(({ record }) => record.id);
  const listed = '“drywake fields list” shows each with its id.';
  return recordUnknown({ code: 'FIELD_UNKNOWN', noun: 'field', listed }, id, all);
}

const notMeant = (file: string): InvalidInputError =>
  new InvalidInputError(
    'RESTORE_UNCONFIRMED',
    `Restoring ${file} would replace every field and label entry that is kept; nothing was changed.`,
    { hint: 'Say --replace if that is meant; what is there now is then written into the data folder first.' },
  );
