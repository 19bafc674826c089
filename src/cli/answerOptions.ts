import type { Command as Program } from 'commander';
import type { FindingInput } from '../schema/evidence.ts';
import type { QuestionInput } from '../schema/question.ts';
import type { CliDeps } from './command.ts';
import { bioassayOption, soilTestOption } from './evidenceOptions.ts';
import { addSeasonOptions, fieldsOf, type SeasonFlags } from './seasonOptions.ts';
import { zoneOption } from './treatmentOptions.ts';

/** Flags of a whole question: season, evidence, zones. */
export interface AnswerFlags extends SeasonFlags {
  soilTest?: FindingInput[];
  bioassay?: FindingInput[];
  zone?: QuestionInput['zones'];
}

/** Adds the flags that every command about one whole question takes. */
export function addAnswerOptions(program: Program): void {
  addSeasonOptions(program);
  program
    .option(
      '--zone <name=overlap...>',
      'part of the field with another overlap, such as "turn rows=2"',
      zoneOption,
    )
    .option(
      '--soil-test <date=fraction...>',
      'residue found over the full dose, such as 2027-04-01=0.2; <0.05 where none was found above 0.05',
      soilTestOption,
    )
    .option(
      '--bioassay <date=reading...>',
      'field bioassay, such as 2027-04-01=clean or =injured',
      bioassayOption,
    );
}

/** The question that a file and the flags on top of it give. */
export async function questionOf(flags: AnswerFlags, deps: CliDeps): Promise<QuestionInput> {
  const { zone } = flags;
  const evidence = [...(flags.soilTest ?? []), ...(flags.bioassay ?? [])];
  return {
    ...(await fieldsOf(flags, deps)),
    ...(evidence.length > 0 ? { evidence } : {}),
    ...(zone ? { zones: zone } : {}),
  } as QuestionInput;
}
