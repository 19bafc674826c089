import { InvalidArgumentError } from 'commander';
import type { FindingInput } from '../schema/evidence.ts';
import { choiceOf } from './choiceOption.ts';

/** Soil residue tests such as 2027-04-01=0.2, or 2027-04-01=<0.05 where none was found; collected over repeats. */
export function soilTestOption(text: string, earlier: FindingInput[] = []): FindingInput[] {
  const match = /^(\d{4}-\d{2}-\d{2})=(<?)(\d+(?:\.\d+)?)$/.exec(text);
  if (!match) throw new InvalidArgumentError('Write DATE=FRACTION, for example 2027-04-01=0.2, or =<0.05.');
  const [, on, below, figure] = match;
  const amount = Number(figure);
  return [
    ...earlier,
    below === '<'
      ? { kind: 'soil test', on, detected: false, detectionLimit: amount }
      : { kind: 'soil test', on, detected: true, fractionLeft: amount },
  ];
}

/** Field bioassays such as 2027-04-01=clean, collected over repeats. */
export function bioassayOption(text: string, earlier: FindingInput[] = []): FindingInput[] {
  const match = /^(\d{4}-\d{2}-\d{2})=(.+)$/.exec(text);
  if (!match)
    throw new InvalidArgumentError('Write DATE=clean or DATE=injured, for example 2027-04-01=clean.');
  const injured = choiceOf(match[2], ['clean', 'injured']) === 'injured';
  return [...earlier, { kind: 'bioassay', on: match[1], injured }];
}
