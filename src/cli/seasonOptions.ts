import type { Command as Program } from 'commander';
import type { WeatherReader } from '../app/weatherReader.ts';
import { assumptionsSchema } from '../schema/assumptions.ts';
import type { Question, QuestionInput } from '../schema/question.ts';
import type { CliDeps } from './command.ts';
import { type GaugeEntries, readGaugeFile } from './gaugeFile.ts';
import {
  chancesOption,
  datesOption,
  irrigationOption,
  jsonObject,
  pairsOption,
  yearsOption,
} from './optionValues.ts';
import { addQuestionOptions, questionFields } from './questionOptions.ts';
import {
  asStationOption,
  dateOrderOption,
  type RecordFlags,
  readOptionsOf,
  unitsInOption,
} from './recordOptions.ts';
import { alsoOption, growthStageOption } from './treatmentOptions.ts';

/** Flags beside those that each set one field of the question. */
export interface SeasonFlags extends RecordFlags {
  weather?: string[];
  question?: string;
  assume?: Record<string, string | number>;
  base?: { baseFrom: number; baseTo: number };
  outlook?: { belowPercent: number; nearPercent: number; abovePercent: number };
  outlookWindow?: { from: string; to: string };
  gauge?: string;
  irrigation?: { date: string; mm: number }[];
  growthStage?: Question['growthStage'];
  also?: QuestionInput['otherTreatments'];
}

/** Adds the flags that every command about a season takes: field, weather, assumptions. */
export function addSeasonOptions(program: Program, leaveOut: readonly (keyof Question)[] = []): void {
  addQuestionOptions(program, leaveOut);
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
    .option(
      '--growth-stage <crop=stage>',
      'crop sprayed over and its BBCH stage in place of --canopy, such as cereals=31',
      growthStageOption,
    )
    .option(
      '--also <treatment...>',
      'another treatment of the field, such as 2026-05-01=atrazine,rate=0.5,interval=9 months, or JSON',
      alsoOption,
    )
    .option('--irrigation <date=mm...>', 'water given or planned, such as 2026-07-04=25', irrigationOption)
    .option('--assume <key=value...>', `change an assumption: ${assumptions}`, pairsOption);
}

/** The records that the flags name, else the store and the demo. */
export async function readerOf(flags: SeasonFlags, deps: CliDeps): Promise<WeatherReader> {
  return flags.weather === undefined
    ? deps.storedReader()
    : deps.fileReader(flags.weather, readOptionsOf(flags));
}

/** The fields that a question file and the flags on top of it give; what is absent takes the schema's default. */
export async function fieldsOf(flags: SeasonFlags, deps: CliDeps): Promise<Record<string, unknown>> {
  const fromFile =
    flags.question === undefined ? {} : jsonObject(await deps.readText(flags.question), flags.question);
  const own = flags.gauge === undefined ? null : readGaugeFile(await deps.readText(flags.gauge), flags.gauge);
  return merged(fromFile, flags, own);
}

function merged(
  fromFile: Record<string, unknown>,
  flags: SeasonFlags,
  own: GaugeEntries | null,
): Record<string, unknown> {
  const irrigation = [...(own?.irrigation ?? []), ...(flags.irrigation ?? [])];
  const { base, outlook, outlookWindow, assume, growthStage, also } = flags;
  return {
    ...fromFile,
    ...questionFields(flags as unknown as Record<string, unknown>),
    ...base,
    ...(growthStage ? { growthStage } : {}),
    ...(also ? { otherTreatments: also } : {}),
    ...(own && own.gauge.length > 0 ? { gauge: own.gauge } : {}),
    ...(irrigation.length > 0 ? { irrigation } : {}),
    ...(outlook || outlookWindow
      ? { outlook: { ...(fromFile.outlook as object | undefined), ...outlook, ...outlookWindow } }
      : {}),
    ...(assume ? { assume: { ...(fromFile.assume as object | undefined), ...assume } } : {}),
  };
}
