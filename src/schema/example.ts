import { z } from 'zod';
import type { questionSchema } from './question.ts';
import { stationExtentSchema } from './weather.ts';

/** The worked question of the first screen, with the invented field it stands for. */
export const exampleSchema = z
  .strictObject({
    question: z.looseObject({}).meta({ description: 'A question; fields with defaults are left out' }),
    farm: z.strictObject({
      name: z.string().meta({ description: 'Farm, invented' }),
      field: z.string().meta({ description: 'Field, invented' }),
      acres: z.number().meta({ description: 'Size', unit: 'acres' }),
      note: z.string().meta({ description: 'That it is invented, in words' }),
    }),
  })
  .meta({ id: 'Example' });
export type Example = {
  question: z.input<typeof questionSchema>;
  farm: z.infer<typeof exampleSchema>['farm'];
};

/** What the page offers to choose from. */
export const choicesSchema = z
  .strictObject({
    residuals: z.array(
      z.strictObject({ name: z.string(), group: z.string(), cautions: z.array(z.string()) }),
    ),
    crops: z.array(z.strictObject({ name: z.string(), aliases: z.array(z.string()) })),
    soilClasses: z.array(z.string()),
    stations: z.array(stationExtentSchema),
  })
  .meta({ id: 'Choices' });
export type Choices = z.infer<typeof choicesSchema>;

/** Whether the server can do its work. */
export const healthSchema = z
  .strictObject({
    status: z.enum(['ok', 'degraded']),
    version: z.string(),
    weather: z.strictObject({
      state: z.enum(['ready', 'unreadable']),
      stations: z.int().min(0),
      message: z.string().nullable(),
    }),
    fields: z.strictObject({
      state: z.enum(['ready', 'unreadable']),
      fields: z.int().min(0),
      labels: z.int().min(0),
      message: z.string().nullable(),
    }),
  })
  .meta({ id: 'Health' });
export type Health = z.infer<typeof healthSchema>;
