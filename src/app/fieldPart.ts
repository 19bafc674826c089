import { parseIsoDate } from '../calendar.ts';
import { InvalidInputError } from '../errors.ts';
import { treatmentLoad } from '../model/deposit/soilLoad.ts';
import { type SoilTexture, type TopsoilLayer, topsoilLayer } from '../model/water/topsoilLayer.ts';
import type { Question } from '../schema/question.ts';
import { DEFAULT_ORGANIC_MATTER_PERCENT } from '../schema/soil.ts';
import { canopyOf } from './canopy.ts';
import { textureOf } from './resolveTexture.ts';

/** What a question says of its field, spraying and dates, whatever the residual and the crop. */
export interface FieldPart {
  /** Date of application [day number]. */
  readonly appliedDay: number;
  /** Planting date [day number]. */
  readonly plantDay: number;
  readonly texture: SoilTexture;
  readonly layer: TopsoilLayer;
  /** Dose in full label doses, overlap included [-]. */
  readonly load: number;
  /** Share of the dose caught by leaves [0-1]. */
  readonly canopyFraction: number;
}

/**
 * Reads that part, and checks that dates fit together.
 *
 * @throws {InvalidInputError} PLANTING_BEFORE_APPLICATION, BASE_PERIOD, OUTLOOK_CHANCES, SOIL_INCOMPLETE, CANOPY_TWICE,
 *   TURF_IS_GRASS
 */
export function fieldPartOf(question: Question): FieldPart {
  const appliedDay = parseIsoDate(question.appliedOn);
  const plantDay = parseIsoDate(question.plantOn);
  checkDates(question, appliedDay, plantDay);
  const { organicMatterPercent = DEFAULT_ORGANIC_MATTER_PERCENT, coverFraction } = question;
  const texture = textureOf(question);
  return {
    appliedDay,
    plantDay,
    texture,
    layer: topsoilLayer(texture, organicMatterPercent, coverFraction),
    load: treatmentLoad(question.rateFraction, question.overlapFactor),
    canopyFraction: canopyOf(question),
  };
}

function checkDates(question: Question, appliedDay: number, plantDay: number): void {
  if (plantDay < appliedDay) {
    throw new InvalidInputError(
      'PLANTING_BEFORE_APPLICATION',
      `The planting date ${question.plantOn} lies before the application on ${question.appliedOn}.`,
      { hint: 'Give a planting date on or after the application.', details: { field: 'plantOn' } },
    );
  }
  const { baseFrom, baseTo } = question;
  if (baseFrom !== undefined && baseTo !== undefined && baseFrom > baseTo) {
    throw new InvalidInputError(
      'BASE_PERIOD',
      `The base period ${baseFrom}-${baseTo} ends before it begins.`,
      {
        hint: 'Give the earlier year first, for example 1981-2018.',
        details: { field: 'baseFrom' },
      },
    );
  }
  const { outlook } = question;
  if (outlook && Math.abs(outlook.belowPercent + outlook.nearPercent + outlook.abovePercent - 100) > 1e-6) {
    throw new InvalidInputError(
      'OUTLOOK_CHANCES',
      `The outlook chances ${outlook.belowPercent}, ${outlook.nearPercent} and ${outlook.abovePercent} do not add up to 100 per cent.`,
      {
        hint: 'Give three chances below, near and above normal, for example 40,35,25.',
        details: { field: 'outlook' },
      },
    );
  }
}
