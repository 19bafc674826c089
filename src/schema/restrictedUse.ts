import { z } from 'zod';

const words = (most: number, description: string) => z.string().max(most).optional().meta({ description });

/**
 * What the United States asks to be written down of a restricted-use application (7 CFR 110.3) and the treatment does
 * not hold already; the last three are for commercial applicators. All may be left open until they are known.
 */
export const restrictedUseSchema = z
  .strictObject({
    productName: words(120, 'Product name as on the label'),
    registrationNumber: words(40, 'Federal registration number as on the label'),
    totalAmount: words(60, 'Total amount of product applied, with its unit, such as "3.5 gal"'),
    location: words(
      300,
      'County, range, township and section; or a map system; or the legal description of the land',
    ),
    site: words(120, 'Crop, commodity, stored product or site treated'),
    applicator: words(120, 'Name of the certified applicator, or of the one supervising'),
    certificateNumber: words(60, 'Certification number of that applicator'),
    time: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time HH:MM')
      .optional()
      .meta({ description: 'Time of application' }),
    customerName: words(120, 'Name of the customer, where applied for hire'),
    customerAddress: words(300, 'Address of the customer'),
  })
  .meta({ id: 'RestrictedUse' });
export type RestrictedUse = z.infer<typeof restrictedUseSchema>;

/** One line of the printed record. */
const recordLineSchema = z.strictObject({
  label: z.string().meta({ description: 'What the line is about' }),
  value: z.string().nullable().meta({ description: 'What was entered; null where nothing was' }),
  required: z
    .boolean()
    .meta({ description: 'Asked of every restricted-use application; others for commercial ones only' }),
});

/** The record of one treatment, ready to print. */
export const applicationRecordSchema = z
  .strictObject({
    field: z.string().meta({ description: 'Farm and field' }),
    treatmentId: z.string(),
    lines: z.array(recordLineSchema),
    missing: z.array(z.string()).meta({ description: 'Required lines that nobody has filled in yet' }),
    notes: z.array(z.string()).meta({ description: 'What to know about such records, in sentences' }),
  })
  .meta({ id: 'ApplicationRecord' });
export type ApplicationRecord = z.infer<typeof applicationRecordSchema>;
