import { z } from 'zod';
import { sourceSchema } from './catalogue.ts';
import { cropIntervalSchema, figureSchema } from './catalogueView.ts';
import { FIELD_COUNTRIES } from './codes.ts';

/** A crop with what is known of it, and every active before it by interval. */
export const cropViewSchema = z
  .strictObject({
    name: z.string(),
    botanicalName: z.string(),
    kind: z.string(),
    aliases: z.array(z.string()),
    country: z.enum(FIELD_COUNTRIES).meta({ description: 'Country whose label rows count' }),
    figures: z.array(figureSchema).meta({ description: 'What is known of it, with marks and sources' }),
    actives: z
      .array(cropIntervalSchema.extend({ active: z.string(), group: z.int() }))
      .meta({ description: 'By interval, unknown ones last' }),
    sources: z.array(sourceSchema).meta({ description: 'Every source cited above' }),
  })
  .meta({ id: 'CatalogueCrop' });
export type CropView = z.infer<typeof cropViewSchema>;
