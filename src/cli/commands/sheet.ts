import { Option, type Command as Program } from 'commander';
import { sheet } from '../../app/sheet.ts';
import type { SheetUnits } from '../../app/sheetInputs.ts';
import { sheetMarkdown } from '../../app/sheetMarkdown.ts';
import { type AnswerFlags, addAnswerOptions, questionOf } from '../answerOptions.ts';
import type { CliDeps } from '../command.ts';
import { readerOf } from '../seasonOptions.ts';

interface SheetFlags extends AnswerFlags {
  units: SheetUnits;
  json?: boolean;
}

/** `drywake sheet`: one page for the grower and the file, as Markdown. */
export function define(program: Program, deps: CliDeps): void {
  addAnswerOptions(program);
  program
    .addOption(new Option('--units <system>', 'units of the sheet').choices(['us', 'metric']).default('us'))
    .option('--json', 'print the sheet as JSON')
    .addHelpText(
      'after',
      `
The interval must be confirmed: give it as read from the label.
Example:
  drywake sheet --station demo-invented --residual flumioxazin --crop lentil --interval "4 months" \\
    --applied 2026-08-14 --plant 2027-05-10 --as-of 2026-09-30 > sheet.md
`,
    )
    .action(async (flags: SheetFlags) => {
      const question = await questionOf(flags, deps);
      const made = await sheet(question, deps.answerDeps(await readerOf(flags, deps)), flags.units);
      deps.terminal.out(flags.json ? `${JSON.stringify(made, null, 2)}\n` : sheetMarkdown(made));
    });
}
