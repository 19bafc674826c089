import { from } from 'arquero';
import { answerField, createDemoReader, type StationRecord, type WeatherReader } from '../src/index.ts';
import { depsOver, plan } from './demo.ts';
import { type Notebook, words } from './kit/notebook.ts';
import { sayOdds } from './kit/say.ts';
import { type Place, realPlaces } from './realPlaces.ts';

const INTERVALS = ['1 month', '2 months', '9 months', '12 months'];

/** The demo's record with its rain multiplied: as invented as the demo itself. */
function scaled(factor: number): WeatherReader {
  const demo = createDemoReader();
  return {
    ...demo,
    async record(station): Promise<StationRecord> {
      const record = await demo.record(station);
      return { ...record, rainTenthsMm: record.rainTenthsMm.map((tenths) => Math.round(tenths * factor)) };
    },
  };
}

const invented = (): Place[] =>
  [
    { name: 'dry, invented (half the demo’s rain)', factor: 0.5 },
    { name: 'middling, invented (the demo)', factor: 1 },
    { name: 'humid, invented (2.4 times the demo’s rain)', factor: 2.4 },
  ].map(({ name, factor }) => ({ name, station: 'demo-invented', deps: depsOver(scaled(factor)) }));

export interface WorthRow {
  readonly place: string;
  readonly interval: string;
  readonly oddsAtLabel: number;
  readonly demand: number;
  readonly stretch: number | null;
}

/** Odds at the label date, place by place, and whether the places are real. */
export async function worthRows(): Promise<{ isReal: boolean; rows: WorthRow[] }> {
  const found = realPlaces();
  const rows: WorthRow[] = [];
  for (const { name, station, latitudeDeg, deps } of found ?? invented()) {
    for (const interval of INTERVALS) {
      const { oddsAtLabelDate, demandBreakdownDays, stretch } = await answerField(
        {
          ...plan,
          station,
          latitudeDeg,
          interval,
          appliedOn: '2015-08-10',
          plantOn: '2016-08-10',
        },
        deps,
      );
      rows.push({
        place: name,
        interval,
        oddsAtLabel: oddsAtLabelDate ?? 0,
        demand: demandBreakdownDays ?? 0,
        stretch,
      });
    }
  }
  return { isReal: found !== null, rows };
}

export const labelWorth: Notebook = {
  name: 'label-worth',
  title: 'What is the label interval worth in dry, middling and humid country?',
  async cells() {
    const { isReal, rows } = await worthRows();
    return [
      words(
        `The same intervals at three places, loam under stubble, sprayed on 10 August at full rate. ${
          isReal
            ? 'The places are real: their public daily records were at hand when this page was written.'
            : 'The places are invented: no real records were at hand when this page was written, so the demo’s record stands in, its rain multiplied.'
        }`,
      ),
      {
        kind: 'table',
        caption:
          'Odds that the residue still harms on the label date, and how far the clear date stretches the interval.',
        table: from(rows),
        columns: {
          place: { head: 'Place' },
          interval: { head: 'Interval' },
          demand: {
            head: 'Asks for, breakdown days',
            isNumber: true,
            say: (days: number) => days.toFixed(1),
          },
          oddsAtLabel: { head: 'Odds on the label date', say: sayOdds },
          stretch: {
            head: 'Stretch to the clear date',
            isNumber: true,
            say: (stretch: number | null) => (stretch === null ? 'not reached' : `× ${stretch.toFixed(2)}`),
          },
        },
      },
      words(
        'The interval is the same everywhere and so is what the label is taken to assume, an inch of rain every twelfth day. In humid country the season brings about that, and one soil in ten is left; in dry country the same number of months brings far fewer breakdown days.',
      ),
    ];
  },
};
