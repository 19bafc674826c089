import { type ChosenInterval, chooseInterval } from '../catalogue/chooseInterval.ts';
import { longerFindings, sayFinding } from '../catalogue/evidenceBeside.ts';
import { sayInterval } from '../catalogue/intervalLength.ts';
import { rowsOfPair } from '../catalogue/rowsOfPair.ts';
import { type Interval, labelDateOf } from '../model/calendar/interval.ts';
import type { Answer, Caution } from '../schema/answer.ts';
import type { Active, Catalogue, Crop } from '../schema/catalogue.ts';
import type { FieldCountry } from '../schema/codes.ts';

/** The rotation interval that a question takes, and what to say beside it. */
export interface ResolvedInterval {
  readonly interval: Answer['inputs']['interval'];
  /** What to know of a catalogue interval: which rows stand in for the crop's own, and that the source says "or more". */
  readonly intervalRemarks: readonly Caution[];
  /** Labels of other countries, and findings and advice that ask for longer than the interval used, one sentence each. */
  readonly longerElsewhere: readonly string[];
}

/** The user's own interval, with the findings and advice that ask for longer; names the catalogue lacks have none. */
export function ownInterval(
  own: Interval,
  catalogue: Catalogue,
  active: Active | null,
  crop: Crop | null,
  appliedDay: number,
): ResolvedInterval {
  const findings = active && crop ? longerFindings(rowsOfPair(catalogue, active, crop), own) : [];
  return {
    interval: {
      text: sayInterval(own),
      ...own,
      lengthDays: labelDateOf(appliedDay, own) - appliedDay,
      origin: 'own label',
      fromMemory: false,
      confirmed: true,
      disagreement: null,
      sources: [],
    },
    intervalRemarks: [],
    longerElsewhere: findings.map((one) => sayFinding(one, catalogue.sources)),
  };
}

/**
 * The catalogue's interval for a field in one country.
 * @param without numbers of rows that another line of their label takes the place of
 * @throws {MissingDataError} INTERVAL_MISSING
 */
export function catalogueInterval(
  catalogue: Catalogue,
  active: Active,
  crop: Crop,
  country: FieldCountry,
  appliedDay: number,
  without: ReadonlySet<number>,
): ResolvedInterval {
  const chosen = chooseInterval(catalogue, active, crop, country, without);
  const { months, days } = chosen;
  return {
    interval: {
      text: chosen.text,
      months,
      days,
      lengthDays: labelDateOf(appliedDay, chosen) - appliedDay,
      origin: 'catalogue',
      fromMemory: chosen.fromMemory,
      confirmed: false,
      disagreement: chosen.disagreement,
      sources: [chosen.sourceTitle],
    },
    intervalRemarks: remarksOf(chosen),
    longerElsewhere: chosen.besideInWords,
  };
}

function remarksOf(chosen: ChosenInterval): Caution[] {
  const atLeast = `The source gives ${chosen.text} or more: your label may ask for longer.`;
  return [
    ...(chosen.fallBack === null ? [] : [{ code: 'interval-fallback', text: chosen.fallBack }]),
    ...(chosen.atLeast ? [{ code: 'interval-at-least', text: atLeast }] : []),
  ];
}
