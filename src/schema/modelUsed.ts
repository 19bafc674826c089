import { z } from 'zod';

/** Which model reckoned, and in which version of the program: stands in every answer. */
export const modelUsedSchema = z
  .strictObject({
    name: z.string().meta({ description: 'Name of the model' }),
    version: z.string().meta({ description: 'Version of the program' }),
  })
  .meta({ id: 'ModelUsed', description: 'Which model reckoned, and in which version of the program' });
export type ModelUsed = z.infer<typeof modelUsedSchema>;
