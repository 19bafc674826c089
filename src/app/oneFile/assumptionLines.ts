import { shownNumber, type Units } from '../../quantities.ts';
import { ASSUMPTIONS, type AssumptionEntry } from '../../schema/assumptionList.ts';
import type { Assumptions } from '../../schema/assumptions.ts';
import { blankName } from '../../schema/fieldNames.ts';
import type { Sheet } from '../../schema/sheet.ts';

/** Every assumption that an answer rests on, named as on the page, in the units asked for; one that the user changed says so. */
export const assumptionLines = (assume: Assumptions, units: Units): Sheet['inputs'] =>
  ASSUMPTIONS.map((entry) => {
    const value = assume[entry.key];
    const changed = value === entry.standard ? '' : ' (changed)';
    return { label: blankName(entry.key), value: `${shown(value, entry, units)}${changed}` };
  });

function shown(
  value: number | string | undefined,
  { quantity, unit, words, blank = '' }: AssumptionEntry,
  units: Units,
): string {
  if (value === undefined) return blank;
  if (typeof value === 'string') return words?.[value] ?? value;
  return `${shownNumber(value, quantity, units)} ${unit[units]}`.trim();
}
