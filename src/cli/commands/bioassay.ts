import type { Command as Program } from 'commander';
import { bioassayGuide } from '../../app/bioassayGuide.ts';
import { sayIn } from '../../app/say.ts';
import { bioassayText } from '../bioassayText.ts';
import type { CliDeps } from '../command.ts';
import { unitsOption, type WordingFlags, wordingOf } from '../wordingOptions.ts';

/** `drywake bioassay`: how to run and read a field bioassay. */
export function define(program: Program, deps: CliDeps): void {
  program
    .requiredOption('--residual <name>', 'active ingredient, ISO common name')
    .requiredOption('--crop <name>', 'rotation crop')
    .addOption(unitsOption('the guide'))
    .option('--json', 'print the guide as JSON')
    .addHelpText('after', '\nExample:\n  drywake bioassay --residual imazethapyr --crop lentil\n')
    .action((flags: WordingFlags & { residual: string; crop: string; json?: boolean }) => {
      const guide = bioassayGuide(deps.catalogue(), flags.residual, flags.crop, sayIn(wordingOf(flags)));
      deps.terminal.out(flags.json ? `${JSON.stringify(guide, null, 2)}\n` : bioassayText(guide));
    });
}
