import type { Command as Program } from 'commander';
import { answerField } from '../../app/answerField.ts';
import { sayIn } from '../../app/say.ts';
import { type AnswerFlags, addAnswerOptions, questionOf } from '../answerOptions.ts';
import { answerText } from '../answerText.ts';
import type { CliDeps } from '../command.ts';
import { readerOf } from '../seasonOptions.ts';
import { addWordingOptions, type WordingFlags, wordingOf } from '../wordingOptions.ts';

interface OddsFlags extends AnswerFlags, WordingFlags {
  season?: boolean;
  json?: boolean;
}

/** `drywake odds`: one question, answered. */
export function define(program: Program, deps: CliDeps): void {
  addAnswerOptions(program);
  addWordingOptions(program, 'the printed answer')
    .option('--season', 'with --json, add the curves and rain that charts need')
    .option('--json', 'print the answer as JSON, its figures metric and unrounded')
    .addHelpText(
      'after',
      `
Examples:
  drywake odds --station demo-invented --residual flumioxazin --crop lentil \\
    --applied 2026-08-14 --plant 2027-05-10 --as-of 2026-09-30
  drywake odds --weather records/ --station USC00241044 --lat 45.662 --residual imazethapyr \\
    --crop lentil --interval "9 months" --applied 2020-08-10 --plant 2021-05-10 --base 1981-2018 --json
`,
    )
    .action((flags: OddsFlags) => answer(flags, deps));
}

async function answer(flags: OddsFlags, deps: CliDeps): Promise<void> {
  const { terminal } = deps;
  const wording = wordingOf(flags);
  const question = await questionOf(flags, deps);
  const result = await answerField(
    question,
    { ...deps.answerDeps(await readerOf(flags, deps)), wording },
    { season: flags.json && flags.season },
  );
  terminal.out(
    flags.json
      ? `${JSON.stringify(result, null, 2)}\n`
      : answerText(result, { say: sayIn(wording), colour: terminal.colour }),
  );
}
