import { isoDateOf } from '../calendar.ts';
import type { Caution } from '../schema/answer.ts';
import type { LabelCondition } from '../schema/labelCondition.ts';
import type { StoredLabel } from '../schema/labelEntry.ts';
import { phCaution } from './phCaution.ts';
import type { Say } from './say.ts';
import type { Treatment } from './treatment.ts';

/** What the label's conditions, and the user's own entry, ask the user to know. */
export function conditionCautions(
  {
    resolved,
    actives,
    conditions,
    conditionsInWords,
    lengthenedFrom,
    passedOver,
    waitsForever,
    shorterGranted,
  }: Treatment,
  stored: StoredLabel | null,
  { dates }: Say,
): Caution[] {
  const cautions: Caution[] = [];
  const say = (code: string, text: string) => cautions.push({ code, text });
  const { interval, application } = resolved;
  if (passedOver.length > 0) {
    say(
      'condition-line',
      `Lines of the same label that do not fit your field are passed over: ${passedOver.join(', ')}. Of the rest the longest counts, ${lengthenedFrom ?? interval.text}.`,
    );
  }
  if (lengthenedFrom !== null) {
    say(
      'condition-longer',
      `Until every condition of the label is met its longer wait counts: ${dates.full(isoDateOf(application.appliedDay + interval.lengthDays))} in place of ${lengthenedFrom} after the application.`,
    );
  }
  if (waitsForever) {
    say(
      'condition-waits',
      'The water that the label asks for first is not sure enough to come within three years; the date stands at the end of that search.',
    );
  }
  const unsettled = conditions.filter(isUnsettled);
  if (unsettled.length > 0) {
    const failed = unsettled.filter(({ state }) => state === 'not met').length;
    const open = unsettled.length - failed;
    const standing = [
      ...(failed > 0 ? [`${isOrAre(failed)} not met`] : []),
      ...(open > 0 ? [`${isOrAre(open)} open`] : []),
    ];
    say(
      failed > 0 ? 'condition-failed' : 'condition-open',
      `Of the label’s conditions ${standing.join(' and ')}, and the label date does not allow for that: it may have to be later, or the crop left out.`,
    );
  }
  if (resolved.lines.some(({ setsDate }) => !setsDate) && conditions.some(({ state }) => state !== 'met')) {
    say(
      'condition-published',
      'Published labels tie their interval here to conditions that are open or not met. Your own interval governs; read whether your label has them too.',
    );
  }
  if (shorterGranted) {
    say(
      'condition-shorter',
      'The conditions for the shorter end of the interval are met. The longer end still counts until you give the shorter one from your own label.',
    );
  }
  if (conditionsInWords !== '') say('label-words', `Your label adds, in its own words: ${conditionsInWords}`);
  if (stored !== null) {
    const { entry, version } = stored;
    say(
      'label-entry',
      `Interval and conditions are those of your own entry ${entry.name}, label ${entry.labelVersion || 'of unknown version'}, read on ${dates.full(entry.enteredOn)} (entry version ${version}).`,
    );
  }
  if (actives.length > 1) productCautions(resolved.active, actives, say);
  return cautions;
}

const isOrAre = (n: number): string => `${n} ${n === 1 ? 'is' : 'are'}`;

/** Open or failed, with no other interval that would allow for it. */
const isUnsettled = ({ setsDate, state, otherwise, kind, text }: LabelCondition): boolean =>
  setsDate &&
  state !== 'met' &&
  otherwise !== 'interval' &&
  kind !== 'startingRain' &&
  !(kind === 'bioassay' && text.includes('may stand in'));

/** What all actives of a product ask for beside the one whose cautions stand in the answer already. */
function productCautions(
  told: Treatment['resolved']['active'],
  actives: Treatment['actives'],
  say: (code: string, text: string) => void,
): void {
  const names = actives.map(({ treatmentName }) => treatmentName).join(', ');
  const groups = actives.flatMap(({ active }) => (active === null ? [] : [String(active.group)]));
  const repeated = groups.some((group, index) => groups.indexOf(group) !== index);
  say(
    'product',
    `All actives of the product are judged together: ${names}. ${
      repeated
        ? 'Residues of one mode-of-action group are added up; the worst group governs.'
        : 'They are of different mode-of-action groups; the worst governs.'
    }`,
  );
  for (const one of actives) {
    const { active } = one;
    if (active === null || active === told) continue;
    if (active.handling) say('handling', `${active.isoName}: ${active.handling.replace(/\.?$/, '.')}`);
    const ph = phCaution(one);
    if (ph) say('ph', `${active.isoName}: ${ph}`);
  }
}
