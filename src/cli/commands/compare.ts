import type { Command as Program } from 'commander';
import { compareResiduals } from '../../app/compareResiduals.ts';
import type { ComparisonInput } from '../../schema/comparison.ts';
import type { CliDeps } from '../command.ts';
import { comparisonText } from '../comparisonText.ts';
import { moneyOption } from '../optionValues.ts';
import { addSeasonOptions, fieldsOf, readerOf, type SeasonFlags } from '../seasonOptions.ts';
import { limitFields, type StakesFlags } from '../stakesOptions.ts';
import { dateStyleOption, type WordingFlags } from '../wordingOptions.ts';

interface CompareFlags extends SeasonFlags, StakesFlags, WordingFlags {
  json?: boolean;
}

/** `drywake compare`: every residual before one crop on one date. */
export function define(program: Program, deps: CliDeps): void {
  addSeasonOptions(program, ['residual', 'interval', 'halfLifeDays', 'labelEntry', 'rateGramsPerHa']);
  program
    .option('--waiting-cost <money>', 'cost of waiting; with --loss, sets the odds limit', moneyOption)
    .option('--loss <money>', 'loss avoided where residue would have hurt, in the same money', moneyOption)
    .addOption(dateStyleOption())
    .option('--json', 'print the table as JSON, metric and unrounded')
    .addHelpText(
      'after',
      `
Example:
  drywake compare --station demo-invented --crop lentil --applied 2026-08-14 --plant 2027-05-10
`,
    )
    .action(async (flags: CompareFlags) => {
      const question = { ...(await fieldsOf(flags, deps)), ...limitFields(flags) } as ComparisonInput;
      const result = await compareResiduals(question, deps.answerDeps(await readerOf(flags, deps)));
      deps.terminal.out(
        flags.json ? `${JSON.stringify(result, null, 2)}\n` : comparisonText(result, flags.dateStyle),
      );
    });
}
