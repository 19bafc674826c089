import { z } from 'zod';

const words = (description: string) => z.string().min(1).meta({ description });
const date = (description: string) => z.iso.date().meta({ description });
const line = (description: string) =>
  z.strictObject({ label: z.string(), value: z.string() }).meta({ description });

/** The curve of the odds over planting dates, for a picture; dates a week apart. */
const pictureSchema = z
  .strictObject({
    points: z.array(
      z.strictObject({
        date: z.iso.date(),
        odds: z.number().min(0).max(1).meta({ description: 'Odds for planting that day', unit: '0-1' }),
      }),
    ),
    plantOn: date('Planting date asked about'),
    labelDate: date('Label date'),
    clearDate: date('Clear date').nullable(),
    oddsLimit: z.number().meta({ description: 'Odds limit', unit: '0-1' }),
    caption: words('What the picture shows, in a sentence'),
  })
  .meta({ id: 'SheetPicture' });
export type SheetPicture = z.infer<typeof pictureSchema>;

/** One page for the grower and the file, in plain words; made from an answer whose interval is confirmed. */
export const sheetSchema = z
  .strictObject({
    title: words('What it is about'),
    field: z
      .strictObject({
        farm: z.string().meta({ description: 'Farm; empty where none is kept' }),
        name: words('What the field is called'),
        area: z.string().nullable().meta({ description: 'Its size in words; null where it is not known' }),
      })
      .nullable()
      .meta({ description: 'The kept field that it is about; null where the question stands by itself' }),
    invented: z
      .string()
      .nullable()
      .meta({ description: 'That place and weather are invented; null where they are real' }),
    sentence: words('The answer in one sentence'),
    advice: words('What to do about it'),
    floor: words('The label as the floor'),
    dates: z.array(line('Dates and odds, in words')),
    thirds: z.array(line('The answer in dry, middling and wet years')),
    zones: z.array(line('Parts of the field with another overlap')),
    picture: pictureSchema.nullable().meta({ description: 'null where no carryover is modelled' }),
    reasons: z.array(words('A reason')).meta({ description: 'Why, and what evidence did' }),
    conditions: z.array(line('A condition of the label: how it stands, and its words')),
    cautions: z.array(words('A caution')),
    inputs: z.array(line('What the answer rests on')),
    weather: words('The weather record'),
    dataDate: date('Last day of the weather record'),
    model: words('Model and version'),
  })
  .meta({ id: 'Sheet' });
export type Sheet = z.infer<typeof sheetSchema>;
