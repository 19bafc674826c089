import { soilOf } from './dissipation.ts';
import { type HarmQuestion, harmOf, sayOdds } from './harm.ts';
import { placeName } from './places.ts';
import { type Check, runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed, unharmedRule } from './rules.ts';

/** Two years after treatment in 1985. */
const TRIALS = {
  picloramLentil: { active: 'picloram', dose: 24, crop: 'lentil', country: 'US', harmed: true },
  picloramPea: { active: 'picloram', dose: 24, crop: 'field pea', country: 'US', harmed: true },
  picloramCanola: { active: 'picloram', dose: 24, crop: 'canola', country: 'US', harmed: false },
  picloramAlfalfa: { active: 'picloram', dose: 24, crop: 'alfalfa', country: 'US', harmed: false },
  metribuzinOnce: { active: 'metribuzin', dose: 410, crop: 'canola', country: 'CA', harmed: false },
  metribuzinTwice: { active: 'metribuzin', dose: 820, crop: 'canola', country: 'CA', harmed: true },
} as const;
type Name = keyof typeof TRIALS;

const RECORDED: Record<Name, Check['recorded']> = {
  picloramLentil: 'not agreed',
  picloramPea: 'not agreed',
  picloramCanola: 'agreed',
  picloramAlfalfa: 'agreed',
  metribuzinOnce: 'agreed',
  metribuzinTwice: 'not agreed',
};

const eachTrial = <T>(make: (name: Name) => T) =>
  Object.fromEntries(Object.keys(TRIALS).map((name) => [name, make(name as Name)])) as Record<Name, T>;

export const v13 = runCase({
  id: 'V13',
  source: {
    title: 'Carryover effects of residual herbicides at three sites in north-eastern Saskatchewan',
    publisher: 'Soils and Crops workshop, University of Saskatchewan',
    year: 1988,
  },
  measured:
    'two years after 1985: picloram 24 g/ha hurt lentil and pea, not canola or alfalfa; metribuzin 410 g/ha hurt nothing, twice that did',
  assumptions: [
    `the weather of 1985-1987 at ${placeName('saskatoon')}, some 200 km from the sites; applied 1 June 1985; loam with 5.6 % organic matter`,
    'intervals, top rates, half-lives as the tool takes them; for picloram the US rows, as the catalogue has none of Canada',
    'chlorsulfuron and metsulfuron-methyl are left out: no label interval for lentil, and of pH only the direction is reported',
  ],
  needsRecords: true,
  checks: eachTrial((name) => {
    const { active, dose, crop, harmed } = TRIALS[name];
    return {
      measured: `${active} ${dose} g/ha: ${crop} ${harmed ? 'hurt' : 'not hurt'}`,
      ...(harmed ? harmedRule : unharmedRule),
      recorded: RECORDED[name],
    };
  }),
  why: 'at a third of its top rate picloram comes out too mild before pulses, and one line for all broadleaf crops cannot part pulses from canola and alfalfa: the two agreements are of the same odds as the two failures. Doubling metribuzin adds little, its half-life being short against 22 months',
  async run(places) {
    const climate = await places.climate('saskatoon');
    return eachTrial((name) => {
      const { active, dose, crop, country, harmed } = TRIALS[name];
      const question: HarmQuestion = {
        active,
        crop,
        country,
        doseGramsPerHa: dose,
        appliedOn: '1985-06-01',
        sownAfterMonths: 24,
        layer: soilOf('loam', 5.6),
        asObserved: true,
      };
      const { oddsAtPlanting, intervalWords } = harmOf(climate, question);
      return {
        model: `${active} ${dose} g, ${crop}, interval ${intervalWords}: ${sayOdds(oddsAtPlanting)}`,
        agrees: saysHarmed(oddsAtPlanting) === harmed,
      };
    });
  },
});
