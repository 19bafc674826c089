import { civilDateOf, isLeapYear } from '../../calendar.ts';

const FIRST_SLOT = [0, 31, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335];

/** Calendar dates in a leap year. */
export const SLOTS = 366;

/** Slot of 29 February. */
export const LEAP_SLOT = 59;

/** Position of a day's calendar date in a leap year, 0 (1 January) to 365; the same date has the same slot in every year. */
export function calendarSlotOf(dayNumber: number): number {
  const { month, day } = civilDateOf(dayNumber);
  return FIRST_SLOT[month - 1] + day - 1;
}

/** The slot of every day of a run, without a division per day. */
export function calendarSlots(firstDay: number, days: number): Uint16Array {
  const slots = new Uint16Array(days);
  let { year } = civilDateOf(firstDay);
  let slot = calendarSlotOf(firstDay);
  for (let i = 0; i < days; i++) {
    slots[i] = slot;
    slot++;
    if (slot === LEAP_SLOT && !isLeapYear(year)) slot++;
    if (slot === SLOTS) {
      slot = 0;
      year++;
    }
  }
  return slots;
}

/** Month of a slot, 1-12. */
export const monthOfSlot = (slot: number): number => FIRST_SLOT.findLastIndex((first) => first <= slot) + 1;
