import {
  answerField,
  createClimateCache,
  createDemoReader,
  demoQuestion,
  loadCatalogue,
  readDataFolder,
} from '../src/index.ts';

const deps = {
  version: 'notebook',
  catalogue: loadCatalogue(readDataFolder(new URL('../data', import.meta.url))),
  climates: createClimateCache(createDemoReader()),
};

const INTERVALS = ['1 month', '2 months', '4 months', '9 months', '12 months', '18 months'];
const percent = (odds: number) => `${Math.round(odds * 100)} %`;

/** One row: an interval, and the days that each third of the years needs beyond it. */
async function rowOf(interval: string): Promise<{ row: string; dryLess: number }> {
  const plan = { ...demoQuestion, asOf: undefined, interval, plantOn: '2028-05-10' };
  const { thirds, inputs, oddsAtLabelDate } = await answerField(plan, deps);
  const beyond = thirds.map(({ daysAfterLabel }) =>
    daysAfterLabel === null ? 'not within 3 years' : `${daysAfterLabel} d`,
  );
  const [dry, , wet] = thirds.map(({ daysAfterLabel }) => daysAfterLabel ?? Number.POSITIVE_INFINITY);
  const cells = [interval, `${inputs.interval.lengthDays} d`, percent(oddsAtLabelDate ?? 0), ...beyond];
  return { row: `| ${cells.join(' | ')} |`, dryLess: dry - wet };
}

/** The notebook: how far a dry year pushes the clear date, on the invented record of the demo. Markdown. */
export async function dryYear(): Promise<{ markdown: string; dryLessWetDays: number[] }> {
  const rows = [];
  for (const interval of INTERVALS) rows.push(await rowOf(interval));
  const markdown = `# How far does a dry year push the clear date?

An invented record of sixty years, about 395 mm a year, on loam under stubble, sprayed on 14 August at full rate. Past
years are sorted by warm rain between spraying and the label date; the driest third, the middle and the wettest each
have a median of their own clear dates. The table gives the days that each third needs **beyond** the label's interval
until its odds stay at 2 in 20 or less.

| label interval | its length | odds on the label date | dry third | middle third | wet third |
| --- | --- | --- | --- | --- | --- |
${rows.map(({ row }) => row).join('\n')}

Where a third clears before winter, dry and wet part by weeks. Where the dry third misses the last warm weeks, it waits
for the next spring: nothing breaks down in frozen soil, and the gap leaps to months.
`;
  return { markdown, dryLessWetDays: rows.map(({ dryLess }) => dryLess) };
}
