import { middleHalfLife, soilOf, yearsOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { bandMeets, bandRule, SOIL_BAND, sayDays } from './rules.ts';

/** Legs between samplings [days after application] with the half-lives that the residues give [d]. */
const LEGS = [
  { from: 18, to: 63, measured: 709, season: 'first summer' },
  { from: 63, to: 145, measured: 190, season: 'summer' },
  { from: 145, to: 337, measured: 210, season: 'winter' },
  { from: 337, to: 504, measured: 126, season: 'summer' },
  { from: 504, to: 690, measured: 152, season: 'winter' },
  { from: 690, to: 843, measured: 59, season: 'summer' },
] as const;
const LAST = 843;
const OVERALL_DAYS = 126;

const meanLog = (values: readonly number[]) =>
  Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);

export const v17 = runCase({
  id: 'V17',
  source: {
    title: 'Picloram field decay in Nova Scotia (title not visible)',
    publisher: 'a Canadian journal',
    year: null,
  },
  measured:
    'picloram 4.48 kg/ha, seven samplings over 843 d: half-life 126 d overall; 190, 126, 59 d over summers, 210 and 152 d over winters',
  assumptions: [
    `weather of all years at ${placeName('ottawa')}, the nearest humid Canadian record at hand, with colder winters; loam`,
    'applied 1 June: the two long gaps between samplings then are the winters, which a date from mid-May to late June gives',
    'half-life from the catalogue, which rests on other sources',
  ],
  needsRecords: true,
  checks: {
    order: {
      measured: 'each winter slower than the summers on either side',
      criterion: 'so in the model, for both winters',
      fair: 'needs neither the half-life nor the soil',
      recorded: 'agreed',
    },
    contrast: {
      measured: 'winters 1.6 times as slow as the summers from day 63 on (geometric means)',
      criterion: `the model's ratio within a factor of ${SOIL_BAND.toFixed(2)} of that`,
      fair: 'the half-life cancels; the factor is the range in which the model puts 9 soils of 10',
      recorded: 'not agreed',
    },
    overall: { measured: 'half-life 126 d over the 843 d', ...bandRule, recorded: 'agreed' },
  },
  why: 'overall loss and order are right, whichever start from mid-May to late June is taken. In frozen soil the model stands still, where the field went on losing, perhaps by leaching; Ottawa’s winters are also harder than Nova Scotia’s',
  async run(places) {
    const { response, halfLife } = figuresOf('picloram');
    const years = yearsOf(await places.climate('ottawa'), {
      layer: soilOf(),
      response,
      month: 6,
      day: 1,
      days: LAST,
    });
    const legs = LEGS.map(({ from, to }) => middleHalfLife(years, halfLife, from, to));
    const ratioOf = (values: readonly number[]) =>
      meanLog([values[2], values[4]]) / meanLog([values[1], values[3], values[5]]);
    const measuredRatio = ratioOf(LEGS.map(({ measured }) => measured));
    const ratio = ratioOf(legs);
    const overall = middleHalfLife(years, halfLife, 0, LAST);
    const days = (value: number) => value.toFixed(0);
    return {
      order: {
        model: `half-lives by leg ${legs.map(days).join(', ')} d`,
        agrees: Math.min(legs[2], legs[4]) > Math.max(legs[1], legs[3], legs[5]),
      },
      contrast: {
        model: `winters ${ratio.toFixed(1)} times as slow (measured ${measuredRatio.toFixed(1)})`,
        agrees: ratio <= measuredRatio * SOIL_BAND && ratio >= measuredRatio / SOIL_BAND,
      },
      overall: { model: `${sayDays(overall)} overall`, agrees: bandMeets(overall, OVERALL_DAYS) },
    };
  },
});
