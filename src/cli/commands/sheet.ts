import { Option, type Command as Program } from 'commander';
import { plannedQuestion } from '../../app/fieldSheet.ts';
import { fieldUnknown } from '../../app/fieldsDesk.ts';
import { type OneFile, oneFile } from '../../app/oneFile/oneFile.ts';
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
  html?: boolean;
}

/** `drywake sheet`: one page for the grower and the file, as Markdown. */
export function define(program: Program, deps: CliDeps): void {
  addAnswerOptions(program);
  addWordingOptions(program, 'the sheet')
    .option('--field <id>', 'a kept field in place of a question: all of it, with farm, field and size')
    .option('--plan <id>', 'with --field, which planned crop; may be left out where there is one only')
    .addOption(new Option('--json', 'print the sheet as JSON').conflicts('html'))
    .option('--html', 'print the answer as one HTML file, with its drawings, that opens without any server')
    .addHelpText(
      'after',
      `
The interval must be confirmed: give it as read from the label.
Examples:
  drywake sheet --station demo-invented --residual flumioxazin --crop lentil --interval "4 months" \\
    --applied 2026-08-14 --plant 2027-05-10 --as-of 2026-09-30 > sheet.md
  drywake sheet --field home-quarter --plan lentil > home-quarter.md
  drywake sheet --field home-quarter --plan lentil --html > home-quarter.html
`,
    )
    .action(async (flags: SheetFlags) => {
      if (flags.html) {
        const file = flags.field === undefined ? fileOfQuestion(flags, deps) : fileOfField(flags, deps);
        deps.terminal.out((await file).html);
        return;
      }
      const made = flags.field === undefined ? await ofQuestion(flags, deps) : await ofField(flags, deps);
      deps.terminal.out(
        flags.json ? `${JSON.stringify(made, null, 2)}\n` : sheetMarkdown(made, wordingOf(flags)),
      );
    });
}

async function ofQuestion(flags: SheetFlags, deps: CliDeps): Promise<Sheet> {
  refusePlan(flags);
  const around = deps.answerDeps(await readerOf(flags, deps));
  return sheet(await questionOf(flags, deps), { ...around, wording: wordingOf(flags) });
}

async function fileOfQuestion(flags: SheetFlags, deps: CliDeps): Promise<OneFile> {
  refusePlan(flags);
  const around = deps.answerDeps(await readerOf(flags, deps));
  const options = { madeAt: deps.clock(), field: null };
  return oneFile(await questionOf(flags, deps), { ...around, wording: wordingOf(flags) }, options);
}

async function ofField(flags: SheetFlags, deps: CliDeps): Promise<Sheet> {
  refuseOtherFlags(flags);
  const { field = '', plan = null } = flags;
  return deps.withDesk((desk) => desk.sheet(field, plan, wordingOf(flags)));
}

async function fileOfField(flags: SheetFlags, deps: CliDeps): Promise<OneFile> {
  refuseOtherFlags(flags);
  const { field: id = '', plan = null } = flags;
  const { kept, all } = await deps.withDesk(async (desk) => ({
    kept: await desk.fields.get(id),
    all: (await desk.fields.list()).kept,
  }));
  if (kept === null) throw fieldUnknown(id, all);
  const field = kept.record;
  const reader = await deps.storedReader();
  const question = plannedQuestion(field, plan, await reader.stations());
  const around = { ...deps.answerDeps(reader), wording: wordingOf(flags) };
  return oneFile(question, around, { madeAt: deps.clock(), field });
}

function refusePlan({ plan }: SheetFlags): void {
  if (plan === undefined) return;
  throw new InvalidInputError('SHEET_FLAGS', 'A planned crop belongs to a kept field, and none is named.', {
    hint: 'Name the field with --field.',
    details: { field: 'plan' },
  });
}

/** A kept field says everything itself: what else is on the command line would silently change the record. */
function refuseOtherFlags(flags: SheetFlags): void {
  const { field: _f, plan: _p, units: _u, dateStyle: _d, json: _j, html: _h, ...rest } = flags;
  const [other] = Object.keys(rest);
  if (other !== undefined) {
    throw new InvalidInputError(
      'SHEET_FLAGS',
      'The sheet of a kept field takes no part of a question beside it.',
      {
        hint: 'Leave out all but --plan, --units, --date-style, --json and --html, and change the field itself; or leave out --field.',
        details: { field: other },
      },
    );
  }
}
