import type { Command as Program } from 'commander';
import { bioassayGuide } from '../../app/bioassayGuide.ts';
import { bioassayText } from '../bioassayText.ts';
import type { CliDeps } from '../command.ts';

/** `drywake bioassay`: how to run and read a field bioassay. */
export function define(program: Program, deps: CliDeps): void {
  program
    .requiredOption('--residual <name>', 'active ingredient, ISO common name')
    .requiredOption('--crop <name>', 'rotation crop')
    .option('--json', 'print the guide as JSON')
    .addHelpText('after', '\nExample:\n  drywake bioassay --residual imazethapyr --crop lentil\n')
    .action((flags: { residual: string; crop: string; json?: boolean }) => {
      const guide = bioassayGuide(deps.catalogue(), flags.residual, flags.crop);
      deps.terminal.out(flags.json ? `${JSON.stringify(guide, null, 2)}\n` : bioassayText(guide));
    });
}
