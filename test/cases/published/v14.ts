import { soilOf } from './dissipation.ts';
import { figuresOf } from './figures.ts';
import { harmOf, sayOdds } from './harm.ts';
import { NORMAN_HALF_RANGE_C } from './normanRecord.ts';
import { placeName } from './places.ts';
import { runCase } from './publishedCase.ts';
import { harmedRule, saysHarmed, unharmedRule } from './rules.ts';

const DOSE_GRAMS_PER_HA = 140;

export const v14 = runCase({
  id: 'V14',
  source: {
    title: 'Wheat and rotational crop response to sulfosulfuron (title paraphrased)',
    publisher: 'Weed Technology 17(1), 55-59',
    year: 2003,
  },
  measured:
    'sulfosulfuron 35-140 g/ha, Oklahoma, sorghum: hurt at 17 months at pH 6.4 only (yield down 58 % at 140 g/ha), not at pH 5.0; clean at 29 months at both',
  assumptions: [
    `weather of all years 1981-2010 at ${placeName('norman')}: real rain and daily mean temperature, a daily range of ${2 * NORMAN_HALF_RANGE_C} °C assumed; applied 1 January; loam`,
    'dose 140 g/ha; interval, top rate and half-life as the tool takes them',
    'for pH the slope of chlorsulfuron, a sister active, stands in: the catalogue knows only the direction for sulfosulfuron and applies no factor, which the last check holds against the tool',
  ],
  needsRecords: true,
  checks: {
    limed: { measured: 'pH 6.4: hurt at 17 months', ...harmedRule, recorded: 'not agreed' },
    acid: { measured: 'pH 5.0: not hurt at 17 months', ...unharmedRule, recorded: 'agreed' },
    limedLater: { measured: 'pH 6.4: not hurt at 29 months', ...unharmedRule, recorded: 'agreed' },
    acidLater: { measured: 'pH 5.0: not hurt at 29 months', ...unharmedRule, recorded: 'agreed' },
    toolItself: {
      measured: 'the two soils differ at 17 months',
      criterion: 'with the catalogue’s own pH response, even odds lie between the two soils',
      fair: 'a user gives pH and expects the tool to use it',
      recorded: 'not agreed',
    },
  },
  why: 'with a sister’s slope three of the four outcomes are right and pH 6.4 at 17 months falls just short of even odds; the tool itself holds only the direction for sulfosulfuron and cannot part the two soils',
  async run(places) {
    const climate = await places.climate('norman');
    const sister = figuresOf('chlorsulfuron');
    const own = figuresOf('sulfosulfuron');
    const ask = (siteFactor: number, sownAfterMonths: number) =>
      harmOf(climate, {
        active: 'sulfosulfuron',
        crop: 'sorghum',
        doseGramsPerHa: DOSE_GRAMS_PER_HA,
        appliedOn: '2000-01-01',
        sownAfterMonths,
        siteFactor,
        layer: soilOf(),
      });
    const said = (name: string, { intervalWords, oddsAtPlanting }: ReturnType<typeof ask>) =>
      `${name}, interval ${intervalWords}: ${sayOdds(oddsAtPlanting)}`;
    const limed = ask(sister.phFactorAt(6.4), 17);
    const acid = ask(sister.phFactorAt(5.0), 17);
    const limedLater = ask(sister.phFactorAt(6.4), 29);
    const acidLater = ask(sister.phFactorAt(5.0), 29);
    const plain = [6.4, 5.0].map((soilPh) => ask(own.phFactorAt(soilPh), 17).oddsAtPlanting);
    return {
      limed: { model: said('pH 6.4, 17 months', limed), agrees: saysHarmed(limed.oddsAtPlanting) },
      acid: { model: said('pH 5.0, 17 months', acid), agrees: !saysHarmed(acid.oddsAtPlanting) },
      limedLater: {
        model: said('pH 6.4, 29 months', limedLater),
        agrees: !saysHarmed(limedLater.oddsAtPlanting),
      },
      acidLater: {
        model: said('pH 5.0, 29 months', acidLater),
        agrees: !saysHarmed(acidLater.oddsAtPlanting),
      },
      toolItself: {
        model: `catalogue’s own response: ${sayOdds(plain[0])} at pH 6.4, ${plain[1].toFixed(2)} at pH 5.0`,
        agrees: saysHarmed(plain[0]) && !saysHarmed(plain[1]),
      },
    };
  },
});
