import { type HarmQuestion, harmOf, sayOdds } from './harm.ts';
import { placeName } from './places.ts';
import { type Check, runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed, unharmedRule } from './rules.ts';

/** Corn a year after half to three times the use rate. */
const TRIALS = {
  clomazoneOnce: { active: 'clomazone', times: 1, harmed: false },
  clomazoneThrice: { active: 'clomazone', times: 3, harmed: true },
  chlorimuronOnce: { active: 'chlorimuron-ethyl', times: 1, harmed: false },
  chlorimuronThrice: { active: 'chlorimuron-ethyl', times: 3, harmed: true },
  imazethapyrOnce: { active: 'imazethapyr', times: 1, harmed: false },
  imazethapyrThrice: { active: 'imazethapyr', times: 3, harmed: false },
} as const;
type Name = keyof typeof TRIALS;

const RECORDED: Record<Name, Check['recorded']> = {
  clomazoneOnce: 'agreed',
  clomazoneThrice: 'not agreed',
  chlorimuronOnce: 'not agreed',
  chlorimuronThrice: 'agreed',
  imazethapyrOnce: 'agreed',
  imazethapyrThrice: 'not agreed',
};

const eachTrial = <T>(make: (name: Name) => T) =>
  Object.fromEntries(Object.keys(TRIALS).map((name) => [name, make(name as Name)])) as Record<Name, T>;

export const v03 = runCase({
  id: 'V03',
  source: {
    title: 'Corn injury following clomazone, chlorimuron, imazaquin and imazethapyr',
    publisher: 'Weed Technology 5(3), 539-544',
    year: 1991,
  },
  measured:
    'Illinois, corn 12 months on: no injury at the use rate; early injury at the top doses (to three times the rate) of clomazone and chlorimuron-ethyl, none of imazethapyr',
  assumptions: [
    `weather of all years at ${placeName('milwaukee')}, some 300 km north; applied 1 June; loam`,
    'use rate = the catalogue’s top rate; intervals, half-lives as the tool takes them',
    'imazaquin is left out: the catalogue has no label interval from it to corn',
    'injury counts as harm though yield recovered',
  ],
  needsRecords: true,
  checks: eachTrial((name) => ({
    measured: `${TRIALS[name].active}, ${TRIALS[name].times}×: ${TRIALS[name].harmed ? 'injured early' : 'no injury'}`,
    ...(TRIALS[name].harmed ? harmedRule : unharmedRule),
    recorded: RECORDED[name],
  })),
  why: 'right at the use rate of clomazone and imazethapyr; tripling the dose moves clomazone too little and imazethapyr too far, since what a dose does follows from half-life and interval alone. For chlorimuron-ethyl the tool takes 18 months, which the label keeps for high pH, so it warns at the use rate',
  async run(places) {
    const climate = await places.climate('milwaukee');
    return eachTrial((name) => {
      const { active, times, harmed } = TRIALS[name];
      const question: HarmQuestion = {
        active,
        crop: 'corn',
        times,
        appliedOn: '2000-06-01',
        sownAfterMonths: 12,
      };
      const { oddsAtPlanting, intervalWords } = harmOf(climate, question);
      return {
        model: `${active} ${times}×, interval ${intervalWords}: ${sayOdds(oddsAtPlanting)}`,
        agrees: saysHarmed(oddsAtPlanting) === harmed,
      };
    });
  },
});
