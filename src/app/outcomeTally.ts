import { type OutcomeScores, outcomeScores } from '../analysis/outcomeScores.ts';
import { DrywakeError } from '../errors.ts';
import type { FieldPlan, FieldRecord } from '../schema/fieldRecord.ts';
import type { OutcomeTally } from '../schema/outcomeTally.ts';
import type { StationExtent } from '../schema/weather.ts';
import { type AnswerDeps, answerField } from './answerField.ts';
import { fieldQuestion } from './fieldQuestion.ts';
import { count } from './words.ts';

const MEANING =
  'Outcomes seen in fields test the odds as a whole: weather, soil, half-life and the label’s margin. Each is held ' +
  'against the odds with the weather and findings up to its planting. Fields of one year share its weather, so few ' +
  'years say little however many fields they hold.';

type Outcome = FieldRecord['outcomes'][number];
type Counted = OutcomeTally['outcomes'][number];
type LeftOut = OutcomeTally['leftOut'][number];

/**
 * The outcomes of kept fields against the odds that stood on each crop's planting day. An outcome belongs to the latest
 * planned crop of its name planted by then; one without odds is left out with the reason.
 */
export async function outcomeTally(
  fields: readonly FieldRecord[],
  stations: readonly StationExtent[],
  deps: AnswerDeps,
): Promise<OutcomeTally> {
  const counted: Counted[] = [];
  const leftOut: LeftOut[] = [];
  for (const record of fields) {
    for (const outcome of record.outcomes) {
      const { id: fieldId, farm, name } = record;
      const about = { fieldId, name: farm === '' ? name : `${farm}, ${name}`, lookedAtOn: outcome.on };
      const found = await oddsBefore(record, outcome, stations, deps);
      if ('reason' in found) leftOut.push({ ...about, crop: outcome.crop, reason: found.reason });
      else {
        const injured = outcome.state === 'injured';
        counted.push({ ...about, ...found, injured, injuredPercent: outcome.injuredPercent ?? null });
      }
    }
  }
  counted.sort((a, b) => (a.plantOn < b.plantOn ? -1 : a.plantOn > b.plantOn ? 1 : 0));
  const injured = counted.filter((one) => one.injured).length;
  const scores = counted.length === 0 ? null : outcomeScores(counted);
  return {
    sentence: sentenceOf(counted.length, injured, scores, leftOut.length),
    meaning: MEANING,
    counted: counted.length,
    injured,
    expected: scores?.expected ?? null,
    brier: scores?.brier ?? null,
    skill: scores?.skill ?? null,
    bins: [...(scores?.bins ?? [])],
    outcomes: counted,
    leftOut,
  };
}

async function oddsBefore(
  record: FieldRecord,
  outcome: Outcome,
  stations: readonly StationExtent[],
  deps: AnswerDeps,
): Promise<Pick<Counted, 'residual' | 'crop' | 'plantOn' | 'odds'> | { readonly reason: string }> {
  const plan = plantedBefore(record, outcome);
  if (plan === null) return { reason: `No ${outcome.crop} is planned with a planting date up to then.` };
  const { crop, plantOn } = plan;
  const station = stations.find(({ id }) => id === record.station) ?? null;
  try {
    const question = fieldQuestion(
      { ...record, evidence: record.evidence.filter(({ on }) => on <= plantOn) },
      plan,
      station && { ...station, lastDate: [station.lastDate, plantOn].sort()[0] },
    );
    const { oddsAtPlanting, inputs } = await answerField(question, deps);
    if (oddsAtPlanting === null) return { reason: 'No carryover is modelled before this crop.' };
    return { residual: inputs.residual.name, crop, plantOn, odds: oddsAtPlanting };
  } catch (error) {
    if (!(error instanceof DrywakeError)) throw error;
    return { reason: error.message };
  }
}

/** The latest planned crop of that name that was planted by the day of the look; null where there is none. */
function plantedBefore({ plans }: FieldRecord, { crop, on }: Outcome): FieldPlan | null {
  const plain = (name: string) => name.trim().toLowerCase();
  const own = plans.filter((plan) => plain(plan.crop) === plain(crop) && plan.plantOn <= on);
  return own.sort((a, b) => (a.plantOn < b.plantOn ? 1 : -1))[0] ?? null;
}

function sentenceOf(counted: number, injured: number, scores: OutcomeScores | null, leftOut: number): string {
  if (scores === null) {
    return leftOut === 0
      ? 'No outcome is recorded in the fields that are kept.'
      : `None of the ${count(leftOut, 'outcome')} recorded in fields has odds to hold it against.`;
  }
  const rest = leftOut === 0 ? '' : ` ${leftOut} without odds ${leftOut === 1 ? 'is' : 'are'} left out.`;
  const few = counted < 20 ? ' So few say little.' : '';
  return `Of ${count(counted, 'crop')} looked at in fields, ${injured} ${injured === 1 ? 'was' : 'were'} hurt; the odds had said ${scores.expected.toFixed(1)}.${few}${rest}`;
}
