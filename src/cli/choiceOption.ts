import { InvalidArgumentError, Option } from 'commander';
import { meantOf } from '../app/meant.ts';

/** A flag whose value is one of a list; another is met with the one that was probably meant, and with all. */
export function choiceOption(flag: string, description: string, choices: readonly string[]): Option {
  return new Option(flag, description).choices(choices).argParser((text: string) => choiceOf(text, choices));
}

/**
 * The text, where it is one of the choices.
 * @throws {InvalidArgumentError} with the one that was probably meant, and all
 */
export function choiceOf(text: string, choices: readonly string[]): string {
  if (choices.includes(text)) return text;
  const meant = meantOf(text, choices);
  throw new InvalidArgumentError(
    `${meant === null ? '' : `${meant} `}Allowed choices are ${choices.join(', ')}.`,
  );
}
