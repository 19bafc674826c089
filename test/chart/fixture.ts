import { z } from 'zod';
import { controlAgainstOdds } from '../../src/chart/controlAgainstOdds.ts';
import type { ChartSpec } from '../../src/chart/frame.ts';
import { oddsSeason } from '../../src/chart/oddsSeason.ts';
import { overlaySeasons } from '../../src/chart/overlaySeasons.ts';
import { dotRows, quantileDots } from '../../src/chart/quantileDots.ts';
import { rainMonths } from '../../src/chart/rainMonths.ts';
import { type Ruler, rulerEnds } from '../../src/chart/ruler.ts';
import { type ChartTokens, LIGHT_TOKENS } from '../../src/chart/theme.ts';
import { yearScatter } from '../../src/chart/yearScatter.ts';
import { answerSchema, type Season } from '../../src/schema/answer.ts';
import given from '../fixtures/web/answer.json' with { type: 'json' };
import { controlRows, overlaid } from './compareFixture.ts';

const { labelDate, clearDate, oddsAtPlanting, oddsAtLabelDate, thirds, years, season } = answerSchema.shape;

/** The parts of an answer that charts draw; invented, and parsed so that they stay true ones. */
const drawnSchema = z.strictObject({
  appliedOn: z.iso.date(),
  plantOn: z.iso.date(),
  oddsLimit: z.number(),
  labelDate,
  clearDate,
  oddsAtPlanting,
  oddsAtLabelDate,
  thirds,
  years,
  season,
});
type Drawn = z.infer<typeof drawnSchema> & { season: Season };

/** The answer that the tests draw. */
export const answer = drawnSchema.parse(given) as Drawn;

const { appliedOn, plantOn, oddsLimit } = answer;

/** The dates marked on the ruler. */
export const marks = { plantOn, labelDate: answer.labelDate, clearDate: answer.clearDate };

/** A ruler as wide as that of a desk. */
export const ruler: Ruler = {
  ...rulerEnds(answer, appliedOn, plantOn),
  widthPx: 760,
  leftPx: 36,
  rightPx: 20,
};

/** Every chart, drawn from an answer. */
export function chartsOf(
  from: Drawn,
  tokens: ChartTokens = LIGHT_TOKENS,
  title?: string,
): Record<string, ChartSpec> {
  const shared = { tokens, description: 'A finding in words.', title, source: title && 'Invented record' };
  const onRuler = { ...shared, ruler, marks };
  const rain = { rainUnit: 'in' as const, rainIn: (mm: number) => mm / 25.4 };
  return {
    quantileDots: quantileDots(dotRows(from.season), {
      ...onRuler,
      oddsAtPlanting: from.oddsAtPlanting ?? 0,
    }),
    oddsSeason: oddsSeason(from.season, { ...onRuler, oddsLimit, picked: from.years[0].year }),
    rainMonths: rainMonths(from.season.rain.months, {
      ...onRuler,
      ...rain,
      season: { from: appliedOn, to: plantOn },
    }),
    controlAgainstOdds: controlAgainstOdds(controlRows, {
      ...shared,
      widthPx: 700,
      oddsLimit,
      picked: ['seen'],
    }),
    overlaySeasons: overlaySeasons(overlaid(from.season, from.labelDate, from.clearDate), {
      ...shared,
      ruler,
      plantOn,
      oddsLimit,
    }),
    yearScatter: yearScatter(from.years, { ...shared, ...rain, widthPx: 640, oddsLimit }),
  };
}
