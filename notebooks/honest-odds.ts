import { escape as computed, from } from 'arquero';
import { type Hindcast, hindcast, PAGE_TOKENS, reliability } from '../src/index.ts';
import { demoDeps, plan } from './demo.ts';
import { type Cell, type Column, type Notebook, words } from './kit/notebook.ts';
import { sayPercent } from './kit/say.ts';
import { type Place, realPlaces } from './realPlaces.ts';

const INTERVALS = ['2 months', '4 months', '9 months'];

const DEMO: Place = { name: 'Larkrise (invented)', station: 'demo-invented', deps: demoDeps };

/** One place and interval looked back on. */
export interface HonestRow {
  readonly place: string;
  readonly interval: string;
  readonly years: number;
  readonly bands: number;
  /** Bands of odds in which what came lies beyond what chance explains. */
  readonly outside: number;
  readonly baseRate: number;
  readonly skill: number | null;
}

/** Days before planting on which the table of places gives its odds. */
const LEAD_DAYS = 60;

/** Every past year of a place left out in turn, for one interval. */
const lookBack = ({ station, latitudeDeg, deps }: Place, interval: string): Promise<Hindcast> =>
  hindcast(
    {
      ...plan,
      station,
      latitudeDeg,
      interval,
      leadDays: [LEAD_DAYS],
      baseFrom: station === DEMO.station ? undefined : 1961,
    },
    deps,
  );

/** Bands of odds that chance alone does not explain. */
const outsideOf = ({ bins }: Hindcast['overall']): number =>
  bins.filter(({ meanOdds, low, high }) => meanOdds < low || meanOdds > high).length;

/** All places by all intervals, and whether real ones are among them. */
export async function honestRows(): Promise<{ isReal: boolean; rows: HonestRow[] }> {
  const real = realPlaces();
  const rows: HonestRow[] = [];
  for (const place of [DEMO, ...(real ?? [])]) {
    for (const interval of INTERVALS) {
      const { overall, years } = await lookBack(place, interval);
      rows.push({
        place: place.name,
        interval,
        years: years.length,
        bands: overall.bins.length,
        outside: outsideOf(overall),
        baseRate: overall.baseRate,
        skill: overall.skill,
      });
    }
  }
  return { isReal: real !== null, rows };
}

const percent = (head: string): Column => ({ head, isNumber: true, say: sayPercent });
const count = (head: string): Column => ({ head, isNumber: true });
const score = (head: string): Column => ({
  head,
  isNumber: true,
  say: (value: number | null) => (value === null ? 'none' : value.toFixed(3)),
});

export const honestOdds: Notebook = {
  name: 'honest-odds',
  title: 'Are the odds honest?',
  async cells(): Promise<readonly Cell[]> {
    const worked = await hindcast(plan, demoDeps);
    const { overall, leads } = worked;
    const { isReal, rows } = await honestRows();
    const outside = rows.reduce((sum, row) => sum + row.outside, 0);
    const bands = rows.reduce((sum, row) => sum + row.bands, 0);
    return [
      words(worked.meaning),
      words(
        `First the worked question of the first screen, on the demo’s invented record, asked 180, 120, 90, 60 and 30 days before planting. ${worked.sentence}`,
      ),
      {
        kind: 'chart',
        caption: `Odds given against how often harm then came: ${outsideOf(overall)} of ${overall.bins.length} bands lie beyond the interval that chance leaves. Dots on the slanting line are honest; an upright line is what chance leaves, the dotted one how often harm came in all.`,
        draw: (widthPx) =>
          reliability(overall.bins, {
            tokens: PAGE_TOKENS,
            description: 'Odds given before planting against the share of soils and years then harmed.',
            widthPx,
            heightPx: Math.min(420, widthPx),
            baseRate: overall.baseRate,
          }) as never,
      },
      {
        kind: 'table',
        caption:
          'Each band of odds: how often it was given, in how many different years, and what then came. Soils and leads of one year share its weather, so the interval counts different years alone.',
        table: from(overall.bins).derive({
          band: computed(({ from: low, to }: { from: number; to: number }) =>
            [sayPercent(low), sayPercent(to)].join(' to '),
          ),
        }),
        columns: {
          band: { head: 'Odds given' },
          forecasts: count('Times given'),
          years: count('Different years'),
          meanOdds: percent('Mean odds'),
          observed: percent('Harm came'),
          low: percent('95 % interval from'),
          high: percent('to'),
        },
      },
      {
        kind: 'table',
        caption:
          'The nearer to planting, the more weather is known. A Brier score is the mean squared miss, so less is better; what is left with the year’s weather known is the soils’ own spread, which no forecast can take away.',
        table: from(leads),
        columns: {
          leadDays: count('Days before planting'),
          brier: score('Brier score'),
          brierWithWeatherKnown: score('With weather known'),
          skill: score('Skill over the base rate'),
          reliability: score('Reliability, 0 is best'),
          resolution: score('Resolution, more is better'),
        },
      },
      words(
        isReal
          ? 'Then more intervals, and three real places from 1961 on: their public daily records were at hand when this page was written.'
          : 'Then more intervals. No real records were at hand when this page was written, so the invented place stands alone.',
      ),
      {
        kind: 'table',
        caption: `Odds given ${LEAD_DAYS} days before planting. Of ${bands} bands in ${rows.length} such looks back, ${outside} lie beyond what chance explains, where one in twenty would by chance alone.`,
        table: from(rows),
        columns: {
          place: { head: 'Place' },
          interval: { head: 'Interval' },
          years: count('Years'),
          baseRate: percent('Harm came'),
          skill: score('Skill'),
          bands: count('Bands'),
          outside: count('Bands beyond chance'),
        },
      },
      words(
        'A skill near 0 is no fault where it stands beside a small base rate: most of what decides is then the soil, which is the same on both sides. Odds on the slanting line say that the weather part is neither too bold nor too shy; whether the model’s soils, half-lives and label margin are right, only outcomes in fields can tell, and the notebook of published trials holds some.',
      ),
    ];
  },
};
