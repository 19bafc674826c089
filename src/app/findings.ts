import type { Finding } from '../analysis/evidence.ts';
import { parseIsoDate } from '../calendar.ts';
import { InvalidInputError } from '../errors.ts';
import { soilConcentration } from '../model/deposit/soilConcentration.ts';
import { soilWaterCharacteristics } from '../model/water/soilWaterCharacteristics.ts';
import { classTexture } from '../model/water/textureClass.ts';
import type { FindingInput } from '../schema/evidence.ts';
import { DEFAULT_ORGANIC_MATTER_PERCENT } from '../schema/soil.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';

/** What an undetected residue is taken for, in detection limits: common practice of laboratories. [-] */
const UNDETECTED = 0.5;

/**
 * The evidence of a question in fractions of the full label dose.
 * @throws {InvalidInputError} EVIDENCE_RATE where a concentration is given and no top label rate is known
 */
export function findingsOf(resolved: ResolvedQuestion): Finding[] {
  return resolved.question.evidence.map((finding): Finding => {
    const day = parseIsoDate(finding.on);
    if (finding.kind === 'bioassay') return { kind: 'bioassay', day, injured: finding.injured };
    return { kind: 'soil test', day, fractionLeft: fractionOf(finding, resolved) };
  });
}

type SoilTest = Extract<FindingInput, { kind: 'soil test' }>;

/** Residue found over the full label dose in the sampled depth; half the detection limit where none was found. [-] */
function fractionOf(test: SoilTest, resolved: ResolvedQuestion): number {
  const { detected, fractionLeft, concentrationMgPerKg, detectionLimit, depthCm } = test;
  const found = detected
    ? (fractionLeft ?? concentrationMgPerKg)
    : UNDETECTED * (detectionLimit ?? Number.NaN);
  if (found === undefined) throw new Error('a soil test without a figure passed the schema');
  const isFraction = detected ? fractionLeft !== undefined : depthCm === undefined;
  return isFraction ? found : found / fullConcentration(depthCm ?? Number.NaN, resolved);
}

/** Concentration of the full label dose in the sampled depth. [mg/kg] */
function fullConcentration(depthCm: number, { active, question, texture }: ResolvedQuestion): number {
  const topRate = active?.topRateGramsPerHa ?? null;
  if (topRate === null) {
    throw new InvalidInputError(
      'EVIDENCE_RATE',
      `No top label rate is known for ${active?.isoName ?? question.residual}, so a concentration cannot be turned into a share of it.`,
      {
        hint: 'Give fractionLeft: the residue found over what the full label rate would have given in that depth.',
        details: { field: 'evidence' },
      },
    );
  }
  const { bulkDensity } = soilWaterCharacteristics({
    ...('textureClass' in texture ? classTexture(texture.textureClass) : texture),
    organicMatterPercent: question.organicMatterPercent ?? DEFAULT_ORGANIC_MATTER_PERCENT,
  });
  return soilConcentration(topRate, depthCm, bulkDensity);
}
