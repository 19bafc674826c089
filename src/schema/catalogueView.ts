import { z } from 'zod';
import { INTERVAL_KINDS, ROW_COUNTRIES, sourceSchema } from './catalogue.ts';
import { FIELD_COUNTRIES } from './codes.ts';
import { markSchema, sourceIdSchema } from './provenance.ts';

const traced = {
  mark: markSchema,
  sources: z.array(sourceIdSchema).meta({ description: 'Ids; titles under sources' }),
};

/** A figure, or words, with unit, mark and sources. */
export const figureSchema = z
  .strictObject({
    name: z.string().meta({ description: 'What it is' }),
    value: z.union([z.number(), z.string()]).meta({ description: 'Number, range or words' }),
    unit: z.string().meta({ description: 'Unit; empty for words and plain numbers' }),
    ...traced,
  })
  .meta({ id: 'CatalogueFigure' });
export type Figure = z.infer<typeof figureSchema>;

/** What a label asks for between an active and a crop, as an answer would take it. */
export const cropIntervalSchema = z
  .strictObject({
    crop: z.string(),
    interval: z.string().nullable().meta({ description: 'In words; null where no label interval is known' }),
    months: z.int().nullable(),
    days: z.int().nullable(),
    atLeast: z.boolean().meta({ description: 'True where the source gives no upper end' }),
    fromMemory: z.boolean().meta({ description: 'True where the row rests on memory' }),
    bioassay: z.boolean().meta({ description: 'True where a field bioassay is asked for' }),
    fallBack: z.string().nullable().meta({ description: 'Which rows stand in, where none names the crop' }),
    disagreement: z.string().nullable().meta({ description: 'How the sources differ, where they do' }),
    beside: z.array(z.string()).meta({ description: 'What other countries, mixes, trials and advice say' }),
  })
  .meta({ id: 'CropInterval' });
export type CropInterval = z.infer<typeof cropIntervalSchema>;

/** One interval row as it stands, its conditions in words. */
export const intervalRowViewSchema = z
  .strictObject({
    rowId: z.int(),
    cropOnSource: z.string(),
    partners: z.array(z.string()).meta({ description: 'Other actives of the ready mix' }),
    kind: z.enum(INTERVAL_KINDS),
    interval: z.string().nullable().meta({ description: 'In words; null where the source gives no length' }),
    conditions: z.array(z.string()).meta({ description: 'Rate, site, variety and clauses in words' }),
    country: z.enum(ROW_COUNTRIES),
    region: z.string(),
    ...traced,
    note: z.string().nullable(),
  })
  .meta({ id: 'IntervalRowView' });
export type IntervalRowView = z.infer<typeof intervalRowViewSchema>;

/** An active with every figure, and what is known of it before each crop. */
export const activeViewSchema = z
  .strictObject({
    name: z.string(),
    group: z.int().meta({ description: 'Mode-of-action group number' }),
    country: z.enum(FIELD_COUNTRIES).meta({ description: 'Country whose label rows count' }),
    figures: z.array(figureSchema),
    cautions: z.array(z.string()),
    crops: z.array(cropIntervalSchema).meta({ description: 'By interval, unknown ones last' }),
    rows: z
      .array(intervalRowViewSchema)
      .meta({ description: 'Rows behind it; only where one crop is asked for' }),
    sources: z.array(sourceSchema).meta({ description: 'Every source cited above' }),
  })
  .meta({ id: 'CatalogueActive' });
export type ActiveView = z.infer<typeof activeViewSchema>;

/** The catalogue at a glance. */
export const catalogueListSchema = z
  .strictObject({
    actives: z.array(
      z.strictObject({
        name: z.string(),
        aliases: z.array(z.string()),
        group: z.int(),
        halfLifeDays: z.number().nullable().meta({ description: 'Typical field half-life', unit: 'd' }),
        halfLifeMark: markSchema.nullable(),
        intervalRows: z.int().meta({ description: 'Interval rows held' }),
        rowsSeen: z.int().meta({ description: 'Of these, rows that were seen in their source' }),
      }),
    ),
    crops: z.array(
      z.strictObject({
        name: z.string(),
        botanicalName: z.string(),
        aliases: z.array(z.string()),
        kind: z.string(),
        sensitiveGroups: z.array(z.string()).meta({ description: 'Groups whose residues usually hurt it' }),
        sensitivity: z.string().nullable(),
        harvestedFor: z.string(),
        grazedOrHayed: z.boolean(),
        coverCrop: z.boolean(),
      }),
    ),
  })
  .meta({ id: 'CatalogueList' });
export type CatalogueList = z.infer<typeof catalogueListSchema>;
