import type { Command as Program } from 'commander';
import { hindcast } from '../../app/hindcast.ts';
import type { HindcastInput } from '../../schema/hindcast.ts';
import type { CliDeps } from '../command.ts';
import { hindcastText } from '../hindcastText.ts';
import { wholeNumberOption } from '../optionValues.ts';
import { createProgressLine } from '../progressLine.ts';
import { addSeasonOptions, fieldsOf, readerOf, type SeasonFlags } from '../seasonOptions.ts';

interface HindcastFlags extends SeasonFlags {
  leads?: number[];
  json?: boolean;
}

/** `drywake hindcast`: were the odds honest in past years? */
export function define(program: Program, deps: CliDeps): void {
  addSeasonOptions(program, ['asOf', 'restOfSeasonRain']);
  program
    .option('--leads <days>', 'days before planting, with commas (default: 180,120,90,60,30)', leadsOption)
    .option('--json', 'print scores, bands and years as JSON, unrounded')
    .addHelpText(
      'after',
      `
Each past year is left out in turn; its odds, from all other years, are held against its own weather.

Example:
  drywake hindcast --station demo-invented --residual flumioxazin --crop lentil --applied 2026-08-14 --plant 2027-05-10
`,
    )
    .action(async (flags: HindcastFlags) => {
      const { leads } = flags;
      const question = {
        ...(await fieldsOf(flags, deps)),
        ...(leads && { leadDays: leads }),
      } as HindcastInput;
      const line = createProgressLine(deps.terminal, 'years looked back on');
      const result = await deps.untilInterrupted(async (signal) =>
        hindcast(question, deps.answerDeps(await readerOf(flags, deps)), { signal, progress: line.show }),
      );
      line.end();
      deps.terminal.out(flags.json ? `${JSON.stringify(result, null, 2)}\n` : hindcastText(result));
    });
}

const leadsOption = (text: string): number[] => text.split(',').map((one) => wholeNumberOption(one.trim()));
