import { Option, type Command as Program } from 'commander';
import { FIELD_COUNTRIES, STAND_USES } from '../schema/codes.ts';
import { type Question, questionSchema } from '../schema/question.ts';
import { TEXTURE_CLASSES } from '../schema/soil.ts';
import { choiceOption } from './choiceOption.ts';
import { numberOption } from './optionValues.ts';

/** A flag that sets one field of a question. */
interface QuestionFlag {
  readonly field: keyof Question;
  /** As commander writes it, such as '--applied <date>'. */
  readonly flag: string;
  readonly parse?: (text: string) => unknown;
  readonly choices?: readonly string[];
}

/** The flags whose value is one field; help text and defaults come from the question's schema. */
const QUESTION_FLAGS: readonly QuestionFlag[] = [
  { field: 'station', flag: '--station <id>' },
  { field: 'latitudeDeg', flag: '--lat <degrees>', parse: numberOption },
  { field: 'elevationM', flag: '--elevation <m>', parse: numberOption },
  { field: 'temperatureStation', flag: '--temperatures-from <id>' },
  { field: 'fillFromNeighbours', flag: '--fill-from-neighbours' },
  { field: 'soilClass', flag: '--soil <class>', choices: TEXTURE_CLASSES },
  { field: 'sandPercent', flag: '--sand <percent>', parse: numberOption },
  { field: 'clayPercent', flag: '--clay <percent>', parse: numberOption },
  { field: 'organicMatterPercent', flag: '--om <percent>', parse: numberOption },
  { field: 'coverFraction', flag: '--cover <fraction>', parse: numberOption },
  { field: 'soilPh', flag: '--ph <value>', parse: numberOption },
  { field: 'country', flag: '--country <code>', choices: FIELD_COUNTRIES },
  { field: 'appliedOn', flag: '--applied <date>' },
  { field: 'residual', flag: '--residual <name>' },
  { field: 'rateFraction', flag: '--rate <fraction>', parse: numberOption },
  { field: 'rateGramsPerHa', flag: '--rate-grams <g/ha>', parse: numberOption },
  { field: 'overlapFactor', flag: '--overlap <factor>', parse: numberOption },
  { field: 'canopyFraction', flag: '--canopy <fraction>', parse: numberOption },
  { field: 'crop', flag: '--crop <name>' },
  { field: 'standUse', flag: '--stand-use <use>', choices: STAND_USES },
  { field: 'labelEntry', flag: '--label-entry <id>' },
  { field: 'interval', flag: '--interval <text>' },
  { field: 'halfLifeDays', flag: '--half-life <days>', parse: numberOption },
  { field: 'plantOn', flag: '--plant <date>' },
  { field: 'oddsLimit', flag: '--limit <odds>', parse: numberOption },
  { field: 'asOf', flag: '--as-of <date>' },
  { field: 'restOfSeasonRain', flag: '--rest-of-season <factor>', parse: numberOption },
];

/** Flags that set several fields, by the field a refusal names. */
const OTHER_FLAGS: Readonly<Record<string, string>> = {
  baseFrom: '--base',
  baseTo: '--base',
  outlook: '--outlook',
  assume: '--assume',
  gauge: '--gauge',
  irrigation: '--irrigation',
  evidence: '--soil-test or --bioassay',
  otherTreatments: '--also',
  zones: '--zone',
  growthStage: '--growth-stage',
  plantFrom: '--plant-from',
  plantTo: '--plant-to',
  stepDays: '--step',
  crops: '--crops',
  box: '--box',
  states: '--state',
  leadDays: '--leads',
};

const nameOf = (flag: string): string => flag.split(' ')[0];

/** The flag that sets a field of a question, for messages; undefined where none does. */
export function flagOf(field: string): string | undefined {
  const [top] = field.split('.');
  const found = QUESTION_FLAGS.find((one) => one.field === top);
  return found ? nameOf(found.flag) : OTHER_FLAGS[top];
}

/** Adds the flags to a command, but for those of some fields. */
export function addQuestionOptions(program: Program, leaveOut: readonly (keyof Question)[]): void {
  for (const { field, flag, parse, choices } of QUESTION_FLAGS) {
    if (leaveOut.includes(field)) continue;
    const option = choices ? choiceOption(flag, describe(field), choices) : new Option(flag, describe(field));
    if (parse) option.argParser(parse);
    program.addOption(option);
  }
}

function describe(field: keyof Question): string {
  const schema = questionSchema.shape[field];
  const { description = '' } = schema.meta() ?? {};
  const absent = schema.safeParse(undefined);
  return absent.success && absent.data !== undefined
    ? `${description} (default: ${absent.data})`
    : description;
}

/** The fields that the flags on a command line set. */
export function questionFields(values: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const fields: Record<string, unknown> = {};
  for (const { field, flag } of QUESTION_FLAGS) {
    const key = new Option(flag).attributeName();
    if (values[key] !== undefined) fields[field] = values[key];
  }
  return fields;
}
