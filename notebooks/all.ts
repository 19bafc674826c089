import { dryCases } from './dry-cases.ts';
import { dryYear } from './dry-year.ts';
import { honestOdds } from './honest-odds.ts';
import type { Notebook } from './kit/notebook.ts';
import { labelWorth } from './label-worth.ts';
import { publishedChecks } from './published-checks.ts';
import { whatMatters } from './what-matters.ts';

/** Every notebook, in the order in which they are best read. */
export const notebooks: readonly Notebook[] = [
  publishedChecks,
  dryYear,
  labelWorth,
  honestOdds,
  whatMatters,
  dryCases,
];
