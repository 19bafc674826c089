import { InvalidArgumentError, type Command as Program } from 'commander';
import { cropByDate } from '../../app/cropByDate.ts';
import type { CropGridInput } from '../../schema/comparison.ts';
import type { CliDeps } from '../command.ts';
import { cropGridText } from '../cropGridText.ts';
import { moneyOption, wholeNumberOption } from '../optionValues.ts';
import { addSeasonOptions, fieldsOf, readerOf, type SeasonFlags } from '../seasonOptions.ts';
import { limitFields, type StakesFlags } from '../stakesOptions.ts';
import { dateStyleOption, type WordingFlags } from '../wordingOptions.ts';

interface CropsFlags extends SeasonFlags, StakesFlags, WordingFlags {
  crops?: string[];
  plantFrom?: string;
  plantTo?: string;
  step?: number;
  third: 'all' | 'dry' | 'wet';
  json?: boolean;
}

/** `drywake crops`: which crops can go in when, after one treatment. */
export function define(program: Program, deps: CliDeps): void {
  addSeasonOptions(program, ['crop', 'plantOn', 'interval']);
  program
    .option('--crops <names>', 'crops to look at, with commas between them (default: all)', (text: string) =>
      text.split(',').map((name) => name.trim()),
    )
    .option('--plant-from <date>', 'first planting date')
    .option('--plant-to <date>', 'last planting date')
    .option('--step <days>', 'days from one date to the next (default: 7)', wholeNumberOption)
    .option('--third <which>', 'odds to print: all years, or the dry or wet third', thirdOption, 'all')
    .option('--waiting-cost <money>', 'cost of waiting; with --loss, sets the odds limit', moneyOption)
    .option('--loss <money>', 'loss avoided where residue would have hurt, in the same money', moneyOption)
    .addOption(dateStyleOption())
    .option('--json', 'print the grid as JSON, metric and unrounded')
    .addHelpText(
      'after',
      `
Example:
  drywake crops --station demo-invented --residual flumioxazin --applied 2026-08-14 \\
    --plant-from 2027-04-15 --plant-to 2027-06-15 --step 14
`,
    )
    .action(async (flags: CropsFlags) => {
      const { crops, plantFrom, plantTo, step } = flags;
      const question = {
        ...(await fieldsOf(flags, deps)),
        ...limitFields(flags),
        ...(crops && { crops }),
        ...(plantFrom !== undefined && { plantFrom }),
        ...(plantTo !== undefined && { plantTo }),
        ...(step !== undefined && { stepDays: step }),
      } as CropGridInput;
      const result = await cropByDate(question, deps.answerDeps(await readerOf(flags, deps)));
      deps.terminal.out(
        flags.json
          ? `${JSON.stringify(result, null, 2)}\n`
          : cropGridText(result, flags.third, flags.dateStyle),
      );
    });
}

function thirdOption(text: string): CropsFlags['third'] {
  if (text !== 'all' && text !== 'dry' && text !== 'wet') {
    throw new InvalidArgumentError('It is one of all, dry and wet.');
  }
  return text;
}
