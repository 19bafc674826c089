import type { Command as Program } from 'commander';
import { catalogueActive, catalogueList } from '../../app/catalogueView.ts';
import { sayIn } from '../../app/say.ts';
import { FIELD_COUNTRIES, type FieldCountry } from '../../schema/codes.ts';
import { activeText, catalogueListText } from '../catalogueText.ts';
import { choiceOption } from '../choiceOption.ts';
import type { CliDeps } from '../command.ts';
import { unitsOption, type WordingFlags } from '../wordingOptions.ts';

interface ListFlags {
  readonly actives?: boolean;
  readonly crops?: boolean;
  readonly json?: boolean;
}

interface ShowFlags extends Pick<WordingFlags, 'units'> {
  readonly crop?: string;
  readonly country?: FieldCountry;
  readonly json?: boolean;
}

const JSON_FLAG = ['--json', 'print the result as JSON'] as const;

/** `drywake catalogue list | show`. */
export function define(program: Program, deps: CliDeps): void {
  program.addHelpText('after', '\nExample:\n  drywake catalogue show imazethapyr --crop lentil\n');
  program
    .command('list')
    .description('actives and crops at a glance')
    .copyInheritedSettings(program)
    .option('--actives', 'actives only')
    .option('--crops', 'crops only')
    .option(...JSON_FLAG)
    .addHelpText('after', '\nExample:\n  drywake catalogue list --crops\n')
    .action((flags: ListFlags) => list(flags, deps));
  program
    .command('show')
    .description('one active: every figure with its mark and sources, and the crops by interval')
    .copyInheritedSettings(program)
    .argument('<active>', 'ISO common name')
    .option('--crop <name>', 'one crop, with every row behind its interval')
    .addOption(
      choiceOption('--country <code>', 'country whose label rows count (default: US)', FIELD_COUNTRIES),
    )
    .addOption(unitsOption('rates and of amounts in conditions'))
    .option(...JSON_FLAG)
    .addHelpText('after', '\nExample:\n  drywake catalogue show chlorsulfuron --crop sorghum\n')
    .action((active: string, flags: ShowFlags) => show(active, flags, deps));
}

function list({ actives = false, crops = false, json }: ListFlags, { terminal, catalogue }: CliDeps): void {
  const both = actives === crops;
  const parts = { actives: both || actives, crops: both || crops };
  const all = catalogueList(catalogue());
  const asked = { actives: parts.actives ? all.actives : [], crops: parts.crops ? all.crops : [] };
  terminal.out(json ? `${JSON.stringify(asked, null, 2)}\n` : catalogueListText(all, parts));
}

function show(active: string, { json, ...choice }: ShowFlags, { terminal, catalogue }: CliDeps): void {
  const view = catalogueActive(catalogue(), active, choice);
  terminal.out(json ? `${JSON.stringify(view, null, 2)}\n` : activeText(view, sayIn(choice)));
}
