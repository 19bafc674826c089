import type { Command, Option } from 'commander';
import type { Wording } from '../schema/wording.ts';
import { choiceOption } from './choiceOption.ts';

/** Flags that say how amounts and dates are said. */
export interface WordingFlags {
  readonly units?: NonNullable<Wording['units']>;
  readonly dateStyle?: NonNullable<Wording['dates']>;
}

/** Adds `--units` and `--date-style`; what is printed in `words`, such as "the printed answer". */
export const addWordingOptions = (command: Command, words: string): Command =>
  command.addOption(unitsOption(words)).addOption(dateStyleOption());

/** Units of what is printed. */
export const unitsOption = (words: string): Option =>
  choiceOption('--units <system>', `units of ${words}`, ['us', 'metric']).default('us');

/** How dates are written in what is printed. */
export const dateStyleOption = (): Option =>
  choiceOption(
    '--date-style <style>',
    'dates in sentences: us = May 10, 2027, iso = 2027-05-10 (default: us, iso with metric units)',
    ['us', 'iso'],
  );

/** The wording that flags ask for. */
export const wordingOf = ({ units, dateStyle }: WordingFlags): Wording => ({
  ...(units !== undefined && { units }),
  ...(dateStyle !== undefined && { dates: dateStyle }),
});
