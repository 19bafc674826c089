import { expect, it } from 'vitest';
import { dryYear } from '../notebooks/dry-year.ts';

it('a dry year never clears before a wet one, at any of the notebook’s intervals', async () => {
  const { markdown, dryLessWetDays } = await dryYear();
  expect(dryLessWetDays.length).toBe(6);
  for (const days of dryLessWetDays) expect(days).toBeGreaterThan(0);
  expect(markdown.match(/^\| \d+ months? \|/gm)?.length).toBe(6);
});
