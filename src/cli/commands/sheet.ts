import type { Command as Program } from 'commander';
import { sheet } from '../../app/sheet.ts';
import { sheetMarkdown } from '../../app/sheetMarkdown.ts';
import { InvalidInputError } from '../../errors.ts';
import type { Sheet } from '../../schema/sheet.ts';
import { type AnswerFlags, addAnswerOptions, questionOf } from '../answerOptions.ts';
import type { CliDeps } from '../command.ts';
import { readerOf } from '../seasonOptions.ts';
import { addWordingOptions, type WordingFlags, wordingOf } from '../wordingOptions.ts';

interface SheetFlags extends AnswerFlags, WordingFlags {
  field?: string;
  plan?: string;
  json?: boolean;
}

/** `drywake sheet`: one page for the grower and the file, as Markdown. */
export function define(program: Program, deps: CliDeps): void {
  addAnswerOptions(program);
  addWordingOptions(program, 'the sheet')
    .option('--field <id>', 'a kept field in place of a question: all of it, with farm, field and size')
    .option('--plan <id>', 'with --field, which planned crop; may be left out where there is one only')
    .option('--json', 'print the sheet as JSON')
    .addHelpText(
      'after',
      `
The interval must be confirmed: give it as read from the label.
Examples:
  drywake sheet --station demo-invented --residual flumioxazin --crop lentil --interval "4 months" \\
    --applied 2026-08-14 --plant 2027-05-10 --as-of 2026-09-30 > sheet.md
  drywake sheet --field home-quarter --plan lentil > home-quarter.md
`,
    )
    .action(async (flags: SheetFlags) => {
      const made = flags.field === undefined ? await ofQuestion(flags, deps) : await ofField(flags, deps);
      deps.terminal.out(
        flags.json ? `${JSON.stringify(made, null, 2)}\n` : sheetMarkdown(made, wordingOf(flags)),
      );
    });
}

async function ofQuestion(flags: SheetFlags, deps: CliDeps): Promise<Sheet> {
  if (flags.plan !== undefined) {
    throw new InvalidInputError('SHEET_FLAGS', 'A planned crop belongs to a kept field, and none is named.', {
      hint: 'Name the field with --field.',
      details: { field: 'plan' },
    });
  }
  const wording = wordingOf(flags);
  return sheet(await questionOf(flags, deps), {
    ...deps.answerDeps(await readerOf(flags, deps)),
    wording,
  });
}

/** A kept field says everything itself: what else is on the command line would silently change the record. */
async function ofField(flags: SheetFlags, deps: CliDeps): Promise<Sheet> {
  const { field = '', plan, units: _units, dateStyle: _style, json: _json, ...rest } = flags;
  const [other] = Object.keys(rest);
  if (other !== undefined) {
    throw new InvalidInputError(
      'SHEET_FLAGS',
      'The sheet of a kept field takes no part of a question beside it.',
      {
        hint: 'Leave out all but --plan, --units, --date-style and --json, and change the field itself; or leave out --field.',
        details: { field: other },
      },
    );
  }
  return deps.withDesk((desk) => desk.sheet(field, plan ?? null, wordingOf(flags)));
}
