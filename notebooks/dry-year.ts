import { from } from 'arquero';
import { type Answer, answerField, PAGE_TOKENS, yearScatter } from '../src/index.ts';
import { demoDeps, plan } from './demo.ts';
import { type Notebook, words } from './kit/notebook.ts';
import { sayOdds } from './kit/say.ts';

const INTERVALS = ['1 month', '2 months', '4 months', '9 months', '12 months', '18 months'];
const MM_PER_INCH = 25.4;

/** Days that each third needs beyond the label's interval. */
export interface IntervalRow {
  readonly interval: string;
  readonly lengthDays: number;
  readonly oddsAtLabel: number;
  readonly dry: number | null;
  readonly middle: number | null;
  readonly wet: number | null;
}

export async function intervalRows(): Promise<IntervalRow[]> {
  const rows = [];
  for (const interval of INTERVALS) {
    const { thirds, inputs, oddsAtLabelDate } = await answerField(
      { ...plan, interval, plantOn: '2028-05-10' },
      demoDeps,
    );
    const beyond = (name: string) => thirds.find((third) => third.name === name)?.daysAfterLabel ?? null;
    rows.push({
      interval,
      lengthDays: inputs.interval.lengthDays,
      oddsAtLabel: oddsAtLabelDate ?? 0,
      dry: beyond('dry'),
      middle: beyond('middle'),
      wet: beyond('wet'),
    });
  }
  return rows;
}

const sayDays = (days: number | null): string => (days === null ? 'not within 3 years' : `${days} d`);
const number = (head: string) => ({ head, isNumber: true, say: sayDays });

const scatterOf = ({ years, inputs }: Answer, crop: string, widthPx: number) =>
  yearScatter(years, {
    tokens: PAGE_TOKENS,
    description: `Each year's odds that the residue hurts ${crop}, against its warm rain.`,
    widthPx,
    heightPx: 300,
    rainUnit: 'in',
    rainIn: (mm) => mm / MM_PER_INCH,
    oddsLimit: inputs.question.oddsLimit,
  });

export const dryYear: Notebook = {
  name: 'dry-year',
  title: 'How far does a dry year push the clear date?',
  async cells() {
    const answer = await answerField(plan, demoDeps);
    const rows = await intervalRows();
    const [dry, , wet] = answer.thirds;
    return [
      words(
        'An invented record of sixty years, some 395 mm a year, on loam under stubble, sprayed on 14 August at full rate. Past years are sorted by warm rain between spraying and the label date; the driest third, the middle and the wettest each have a median of their own clear dates. In the drawing a year of the driest third is a triangle, of the middle a ring, of the wettest a square; the driest of all is named, and the dotted line is the odds limit of 2 in 20.',
      ),
      {
        kind: 'chart',
        caption: `Flumioxazin before lentil on 10 May: the driest third of the years averages ${sayOdds(dry.odds)}, the wettest ${sayOdds(wet.odds)}.`,
        draw: (widthPx) => scatterOf(answer, 'lentil', widthPx) as never,
      },
      {
        kind: 'table',
        caption:
          'Days beyond the label’s interval until the odds stay at 2 in 20 or less, by third of the years.',
        table: from(rows),
        columns: {
          interval: { head: 'Label interval' },
          lengthDays: { head: 'Its length', isNumber: true, say: (days: number) => `${days} d` },
          oddsAtLabel: { head: 'Odds on the label date', say: sayOdds },
          dry: number('Dry third'),
          middle: number('Middle third'),
          wet: number('Wet third'),
        },
      },
      words(
        'Where a third clears before winter, dry and wet part by weeks. Where the dry third misses the last warm weeks it waits for the next spring: nothing breaks down in frozen soil, and the gap leaps to months.',
      ),
    ];
  },
};
