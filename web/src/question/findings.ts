import type { QuestionInput } from '../api/contract.ts';

/** A soil test or a bioassay as the question holds it; a soil test may still lack its figures. */
export type FindingInput = NonNullable<QuestionInput['evidence']>[number];
export type SoilTestInput = Extract<FindingInput, { kind: 'soil test' }>;

/** Ways in which a laboratory reports. */
export type Report = 'share' | 'ppm' | 'none-share' | 'none-ppm';

/** Depth taken when a concentration is chosen, until another is given: about six inches. [cm] */
const USUAL_DEPTH_CM = 15;

/** How a soil test is reported: a depth stands beside a concentration, and beside nothing else. */
export function reportOf({ detected, depthCm }: SoilTestInput): Report {
  const unit = depthCm === undefined ? 'share' : 'ppm';
  return detected === false ? `none-${unit}` : unit;
}

/** The same test, reported another way; figures of the former way are dropped. */
export function reportedAs({ on }: SoilTestInput, report: Report): SoilTestInput {
  return {
    kind: 'soil test',
    on,
    ...(report.startsWith('none') && { detected: false }),
    ...(report.endsWith('ppm') && { depthCm: USUAL_DEPTH_CM }),
  };
}

/** Names of a soil test’s figures in an address. */
const FIGURES = [
  ['share', 'fractionLeft'],
  ['ppm', 'concentrationMgPerKg'],
  ['limit', 'detectionLimit'],
  ['depth', 'depthCm'],
] as const;

/** For the address: "bioassay:2027-04-20:clean,soil-test:2027-03-02:ppm=0.02:depth=15". */
export const encodeFindings = (findings: readonly FindingInput[]): string =>
  findings
    .map((finding) => {
      if (finding.kind === 'bioassay') return `bioassay:${finding.on}:${finding.injured ? 'hurt' : 'clean'}`;
      const figures = FIGURES.flatMap(([name, key]) =>
        finding[key] === undefined ? [] : [`${name}=${finding[key]}`],
      );
      const none = finding.detected === false ? ['none'] : [];
      return ['soil-test', finding.on, ...none, ...figures].join(':');
    })
    .join(',');

/** The same read back; parts that cannot be read stay as they are, for the server to refuse. */
export const decodeFindings = (text: string): FindingInput[] =>
  text
    .split(',')
    .filter((part) => part !== '')
    .map((part) => {
      const [kind, on, ...rest] = part.split(':');
      if (kind === 'bioassay') {
        const [result] = rest;
        const injured = result === 'hurt' ? true : result === 'clean' ? false : result;
        return { kind, on, injured } as FindingInput;
      }
      const finding: Record<string, unknown> = { kind: kind.replace('-', ' '), on };
      for (const piece of rest) {
        const [name, value] = piece.split('=');
        const known = FIGURES.find(([figure]) => figure === name);
        if (name === 'none') finding.detected = false;
        else finding[known ? known[1] : name] = Number(value);
      }
      return finding as unknown as FindingInput;
    });
