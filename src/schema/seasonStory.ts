import { z } from 'zod';

const odds = z.number().min(0).max(1).meta({ description: 'Odds at planting', unit: '0-1' });
const breakdownDays = (description: string) => z.number().meta({ description, unit: 'breakdown days' });

/** How the odds have moved since the application, and what waiting gains. */
export const seasonStorySchema = z
  .strictObject({
    weeks: z
      .array(
        z.strictObject({
          observedThrough: z.iso
            .date()
            .nullable()
            .meta({ description: 'Last day observed by then; null for the plan' }),
          odds,
        }),
      )
      .meta({
        description: 'Odds at planting as known then: the plan, then week by week; empty while planning',
      }),
    delay: z
      .array(z.strictObject({ weeks: z.int(), plantOn: z.iso.date(), odds, gain: z.number() }))
      .meta({ description: 'Odds for planting some weeks later, and how much lower than a week earlier' }),
    rainShortfallMm: z
      .number()
      .nullable()
      .meta({ description: 'Normal rain to date less the rain observed; null while planning', unit: 'mm' }),
    breakdown: z
      .strictObject({
        toDate: breakdownDays('Since the application'),
        normal: breakdownDays('Mean of the years over the same days'),
        shortfall: breakdownDays('Normal less to date'),
      })
      .nullable()
      .meta({ description: 'null while planning' }),
  })
  .meta({ id: 'SeasonStory' });
