import { z } from 'zod';

const factor = (description: string) =>
  z
    .number()
    .gt(0)
    .nullable()
    .meta({ description: `${description}; above 1 asks for more time`, unit: '-' });
const odds = (description: string) => z.number().min(0).max(1).meta({ description, unit: '0-1' });

/** Reasons behind the odds at planting. The factors are all there or all null; `words` always say it. */
export const whySchema = z
  .strictObject({
    calendar: factor('The label’s demand over what the label run brings by planting'),
    warmth: factor('The label run in an ordinary year over that at this season’s warmth'),
    rain: factor('The label run at this season’s warmth over the real run: rain and soil moisture'),
    dose: factor('Rate and overlap'),
    soil: factor('Soil pH and other known site factors'),
    whole: factor('Product of the five'),
    rainDays: z
      .number()
      .nullable()
      .meta({ description: 'Clear date with the real rain less that with label-basis rain', unit: 'd' }),
    parts: z
      .array(
        z.strictObject({
          application: z.int().min(1).meta({ description: 'Which application, the first being 1' }),
          residual: z.string().meta({ description: 'What was sprayed' }),
          appliedOn: z.iso.date().meta({ description: 'When it was sprayed' }),
          where: z.enum(['ground', 'leaves']),
          oddsWith: odds('Odds at planting with this part of the dose alone'),
          oddsWithout: odds('Odds at planting with all the other parts'),
        }),
      )
      .meta({ description: 'Parts of the dose, where there are several and so no factors' }),
    words: z.array(z.string()).meta({ description: 'The reasons in sentences' }),
  })
  .meta({ id: 'Why' });
