import type { Command as Program } from 'commander';
import { hindcast } from '../../app/hindcast.ts';
import { outcomeTally } from '../../app/outcomeTally.ts';
import type { HindcastInput } from '../../schema/hindcast.ts';
import type { OutcomeTally } from '../../schema/outcomeTally.ts';
import type { CliDeps } from '../command.ts';
import { hindcastText } from '../hindcastText.ts';
import { wholeNumberOption, workersOption } from '../optionValues.ts';
import { createProgressLine } from '../progressLine.ts';
import { addSeasonOptions, fieldsOf, readerOf, type SeasonFlags } from '../seasonOptions.ts';
import { withWorkshop } from '../withWorkshop.ts';

interface HindcastFlags extends SeasonFlags {
  leads?: number[];
  workers?: number;
  json?: boolean;
}

/** Years of a long record: how many it has is not known before it is read. Each year and lead is a piece of work. */
const YEARS_FOR_NOW = 60;
const USUAL_LEADS = 5;

/** `drywake hindcast`: were the odds honest in past years? */
export function define(program: Program, deps: CliDeps): void {
  addSeasonOptions(program, ['asOf', 'restOfSeasonRain']);
  program
    .option('--leads <days>', 'days before planting, with commas (default: 180,120,90,60,30)', leadsOption)
    .option('--workers <n>', 'worker threads; 0 for none (default: by the number of leads)', workersOption)
    .option('--json', 'print scores, bands and years as JSON, unrounded')
    .addHelpText(
      'after',
      `
Each past year is left out in turn; its odds, from all other years, are held against its own weather. Outcomes that are
recorded in kept fields are tallied beside it, against the odds that stood on their planting days.

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
      const result = await deps.untilInterrupted((signal) =>
        withWorkshop(
          deps,
          YEARS_FOR_NOW * (leads?.length ?? USUAL_LEADS),
          flags.workers,
          async (workshop) => {
            const weather = await readerOf(flags, deps);
            const around = { ...deps.answerDeps(weather), weather, workshop, recorded: () => tallyOf(deps) };
            return hindcast(question, around, { signal, progress: line.show });
          },
        ),
      );
      line.end();
      deps.terminal.out(flags.json ? `${JSON.stringify(result, null, 2)}\n` : hindcastText(result));
    });
}

async function tallyOf(deps: CliDeps): Promise<OutcomeTally> {
  const fields = await deps.keptFields();
  const reader = await deps.storedReader();
  return outcomeTally(fields, await reader.stations(), deps.answerDeps(reader));
}

const leadsOption = (text: string): number[] => text.split(',').map((one) => wholeNumberOption(one.trim()));
