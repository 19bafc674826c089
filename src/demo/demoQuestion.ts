import type { QuestionInput } from '../schema/question.ts';
import { DEMO_LAST_DATE, DEMO_STATION } from './inventedRecord.ts';

/**
 * The worked question of the first screen: a stubble field on loam, sprayed after small-grain harvest, lentil
 * wanted next spring, asked when a dry late summer has already gone by. The interval is left to the catalogue
 * (4 months, marked from memory there), so the label date falls in December and frozen ground does the rest.
 */
export const demoQuestion: QuestionInput = {
  station: DEMO_STATION.id,
  soilClass: 'loam',
  appliedOn: '2026-08-14',
  residual: 'flumioxazin',
  crop: 'lentil',
  plantOn: '2027-05-10',
  oddsLimit: 0.1,
  asOf: DEMO_LAST_DATE,
};
