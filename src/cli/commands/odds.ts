import { Option, type Command as Program } from 'commander';
import { answerField } from '../../app/answerField.ts';
import { assumptionsSchema } from '../../schema/assumptions.ts';
import type { QuestionInput } from '../../schema/question.ts';
import { answerText } from '../answerText.ts';
import type { CliDeps } from '../command.ts';
import { type GaugeEntries, readGaugeFile } from '../gaugeFile.ts';
import {
  chancesOption,
  datesOption,
  irrigationOption,
  jsonObject,
  pairsOption,
  yearsOption,
} from '../optionValues.ts';
import { addQuestionOptions, questionFields } from '../questionOptions.ts';
import {
  asStationOption,
  dateOrderOption,
  type RecordFlags,
  readOptionsOf,
  unitsInOption,
} from '../recordOptions.ts';

/** Flags beside those that each set one field of the question. */
interface OddsFlags extends RecordFlags {
  weather?: string[];
  question?: string;
  assume?: Record<string, string | number>;
  base?: { baseFrom: number; baseTo: number };
  outlook?: { belowPercent: number; nearPercent: number; abovePercent: number };
  outlookWindow?: { from: string; to: string };
  gauge?: string;
  irrigation?: { date: string; mm: number }[];
  units: 'us' | 'metric';
  season?: boolean;
  json?: boolean;
}

/** `drywake odds`: one question, answered. */
export function define(program: Program, deps: CliDeps): void {
  addQuestionOptions(program);
  const assumptions = Object.keys(assumptionsSchema.shape).join(', ');
  program
    .option(
      '--weather <path...>',
      'weather files or folders to read straight from; else the store and the demo',
    )
    .addOption(unitsInOption())
    .addOption(dateOrderOption())
    .addOption(asStationOption())
    .option('--question <file>', 'a question as JSON; flags override its fields')
    .option('--base <years>', 'base period, such as 1981-2018 (default: all years)', yearsOption)
    .option('--outlook <chances>', 'chances in per cent below, near, above normal: 40,35,25', chancesOption)
    .option(
      '--outlook-window <from..to>',
      'dates the outlook speaks of (default: application to planting)',
      datesOption,
    )
    .option(
      '--gauge <file>',
      'CSV of your own gauge: date, rain_mm or rain_in, and irrigation_mm or irrigation_in',
    )
    .option('--irrigation <date=mm...>', 'water given or planned, such as 2026-07-04=25', irrigationOption)
    .option('--assume <key=value...>', `change an assumption: ${assumptions}`, pairsOption)
    .addOption(
      new Option('--units <system>', 'units of the printed answer').choices(['us', 'metric']).default('us'),
    )
    .option('--season', 'with --json, add the curves and rain that charts need')
    .option('--json', 'print the answer as JSON, metric and unrounded')
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
  const fromFile =
    flags.question === undefined ? {} : jsonObject(await deps.readText(flags.question), flags.question);
  const weather =
    flags.weather === undefined
      ? await deps.storedReader()
      : deps.fileReader(flags.weather, readOptionsOf(flags));
  const own = flags.gauge === undefined ? null : readGaugeFile(await deps.readText(flags.gauge), flags.gauge);
  const question = mergeQuestion(fromFile, flags, own);
  const result = await answerField(question, deps.answerDeps(weather), {
    season: flags.json && flags.season,
  });
  terminal.out(
    flags.json
      ? `${JSON.stringify(result, null, 2)}\n`
      : answerText(result, { units: flags.units, colour: terminal.colour }),
  );
}

/** A question file with the fields that flags set on top; what is still absent takes the schema's default. */
function mergeQuestion(
  fromFile: Record<string, unknown>,
  flags: OddsFlags,
  own: GaugeEntries | null,
): QuestionInput {
  const irrigation = [...(own?.irrigation ?? []), ...(flags.irrigation ?? [])];
  const { base, outlook, outlookWindow, assume } = flags;
  return {
    ...fromFile,
    ...questionFields(flags as unknown as Record<string, unknown>),
    ...base,
    ...(own && own.gauge.length > 0 ? { gauge: own.gauge } : {}),
    ...(irrigation.length > 0 ? { irrigation } : {}),
    ...(outlook || outlookWindow
      ? { outlook: { ...(fromFile.outlook as object | undefined), ...outlook, ...outlookWindow } }
      : {}),
    ...(assume ? { assume: { ...(fromFile.assume as object | undefined), ...assume } } : {}),
  } as QuestionInput;
}
