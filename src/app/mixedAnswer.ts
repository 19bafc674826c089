import { isoDateOf } from '../calendar.ts';
import type { Answer, Caution } from '../schema/answer.ts';
import type { Question } from '../schema/question.ts';
import { type BareAnswer, forbiddenWords } from './dressAnswer.ts';
import { fieldLabelDay, rulingInterval } from './fieldTreatments.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import type { Say } from './say.ts';
import { adviceOf } from './sentence.ts';
import type { Treatment } from './treatment.ts';

interface JudgedSpecies {
  readonly treatment: Treatment;
  readonly ownLabelDate: string;
  readonly answer: BareAnswer;
}

/**
 * A mix of crops: every species is judged, and the most restricted rules. The label date is the latest of all, the odds
 * are the worst, and the clear date is the last on which any of them clears.
 */
export function mixedAnswer(
  question: Question,
  treatments: readonly Treatment[],
  answerTo: (resolved: ResolvedQuestion) => BareAnswer,
  dress: (treatment: Treatment, answer: BareAnswer) => Answer,
  say: Say,
): Answer {
  const labelDayOf = ({ resolved }: Treatment) => fieldLabelDay(resolved);
  const latestDay = Math.max(...treatments.map(labelDayOf));
  const held = asOneMix(treatments);
  const judged = treatments.map(
    (treatment, index): JudgedSpecies => ({
      treatment,
      ownLabelDate: isoDateOf(labelDayOf(treatment)),
      answer: answerTo(held[index].resolved),
    }),
  );
  const ruling = judged.reduce((worst, next) => (isWorse(next.answer, worst.answer) ? next : worst));
  const holdsLatest = (one: Treatment) => labelDayOf(one) === latestDay;
  const latest = holdsLatest(ruling.treatment)
    ? ruling.treatment
    : (treatments.find(holdsLatest) ?? ruling.treatment);
  const mixName = treatments.map(({ resolved }) => resolved.cropName).join(' + ');
  const rulingName = ruling.treatment.resolved.cropName;
  const said = `${mixName} (judged by ${rulingName})`;
  const answer = answerTo({ ...notBefore(ruling.treatment.resolved, latestDay), cropName: said });
  const clearDate = latestClear(judged, isoDateOf(latestDay));
  const intervals = treatments.map(({ resolved }) => resolved.interval);
  const mainInterval = {
    ...latest.resolved.interval,
    confirmed: intervals.every(({ confirmed }) => confirmed),
    fromMemory: intervals.some(({ fromMemory }) => fromMemory),
  };
  const governing = rulingInterval(latest.resolved, say);
  const inputs = {
    ...answer.inputs,
    question,
    interval: governing === latest.resolved.interval ? mainInterval : governing,
    mainInterval,
  };
  const labelDate = isoDateOf(latestDay);
  const whole = {
    ...answer,
    labelDate,
    clearDate,
    advice:
      clearDate === answer.clearDate
        ? answer.advice
        : adviceOf({ ...answer, labelDate, clearDate, notClear: 'within the time looked at', inputs, say }),
    zones: worstZones(judged),
    stretch: stretchOf(question.appliedOn, labelDate, clearDate),
  };
  const dressed = dress(ruling.treatment, whole);
  const others = treatments.filter((treatment) => treatment !== ruling.treatment);
  const cautions: Caution[] = [
    {
      code: 'mix',
      text: `A mix is ruled by its most restricted species: ${rulingName} has the worst odds${
        latest === ruling.treatment ? ' and' : `, ${latest.resolved.cropName}`
      } the latest label date (${say.dates.full(labelDate)}).`,
    },
    ...dressed.cautions,
    ...otherCautions(judged, ruling, dress),
  ];
  return {
    ...dressed,
    advice: [...forbiddenWords(others), dressed.advice].join(' '),
    inputs: { ...dressed.inputs, question, interval: inputs.interval, mainInterval },
    conditions: treatments.flatMap(({ resolved: { cropName }, conditions }) =>
      conditions.map((one) => ({
        ...one,
        name: `${cropName}: ${one.name}`,
        text: `${cropName}: ${one.text}`,
      })),
    ),
    mix: judged.map(({ treatment, ownLabelDate, answer: own }) => ({
      crop: treatment.resolved.cropName,
      interval: treatment.resolved.interval.text,
      labelDate: ownLabelDate,
      clearDate: own.carryoverModelled ? own.clearDate : labelDate,
      oddsAtPlanting: own.oddsAtPlanting,
      rules: treatment === ruling.treatment,
    })),
    cautions: cautions.filter(({ text }, index) => cautions.findIndex((one) => one.text === text) === index),
  };
}

/** The treatment before each species of a mix, none before the latest label date of all. */
export function asOneMix(treatments: readonly Treatment[]): readonly Treatment[] {
  if (treatments.length === 1) return treatments;
  const latestDay = Math.max(...treatments.map(({ resolved }) => fieldLabelDay(resolved)));
  return treatments.map((one) => ({ ...one, resolved: notBefore(one.resolved, latestDay) }));
}

/** The same question with a label date no earlier than a day. */
function notBefore(resolved: ResolvedQuestion, day: number): ResolvedQuestion {
  const { application, otherApplications, beside } = resolved;
  return {
    ...resolved,
    application: { ...application, notBefore: day },
    otherApplications: otherApplications.map((other) => ({ ...other, notBefore: day })),
    beside: beside.map((other) => ({ ...other, resolved: notBefore(other.resolved, day) })),
  };
}

/** Worse odds; of equal ones, the later clear date. */
function isWorse(one: BareAnswer, other: BareAnswer): boolean {
  const odds = (one.oddsAtPlanting ?? -1) - (other.oddsAtPlanting ?? -1);
  if (odds !== 0) return odds > 0;
  return other.clearDate !== null && (one.clearDate === null || one.clearDate > other.clearDate);
}

/** Each zone by its worst species: the highest odds, and the last date on which any of them clears. */
function worstZones(judged: readonly JudgedSpecies[]): BareAnswer['zones'] {
  const [{ answer: first }] = judged;
  return first.zones.map(({ name, overlapFactor }, index) => {
    const zones = judged.map(({ answer }) => answer.zones[index]);
    const odds = zones.flatMap(({ oddsAtPlanting }) => (oddsAtPlanting === null ? [] : [oddsAtPlanting]));
    const clear = zones.map(({ clearDate }) => clearDate ?? NEVER).sort();
    const last = clear[clear.length - 1];
    return {
      name,
      overlapFactor,
      oddsAtPlanting: odds.length === 0 ? null : Math.max(...odds),
      clearDate: last === NEVER ? null : last,
    };
  });
}

/** Sorts after every date. */
const NEVER = '9999-12-31';

function latestClear(judged: readonly JudgedSpecies[], labelDate: string): string | null {
  const dates = judged.map(({ answer }) => answer.clearDate);
  if (dates.includes(null)) return null;
  return dates.reduce<string>((last, date) => (date !== null && date > last ? date : last), labelDate);
}

function stretchOf(appliedOn: string, labelDate: string, clearDate: string | null): number | null {
  const from = Date.parse(appliedOn);
  const label = Date.parse(labelDate) - from;
  return clearDate === null || label === 0 ? null : (Date.parse(clearDate) - from) / label;
}

/** Cautions about the intervals of the other species, with the species named. */
function otherCautions(
  judged: readonly JudgedSpecies[],
  ruling: JudgedSpecies,
  dress: (treatment: Treatment, answer: BareAnswer) => Answer,
): Caution[] {
  return judged
    .filter((one) => one !== ruling)
    .flatMap(({ treatment, answer }) =>
      dress(treatment, answer)
        .cautions.filter(({ code }) => /^(interval|condition|crop|label-words)/.test(code))
        .map((caution) => ({ ...caution, text: `${treatment.resolved.cropName}: ${caution.text}` })),
    );
}
