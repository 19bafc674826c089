const ZERO = 48;

/**
 * Time of day that stands as four digits HHMM in a file; NaN where there is none, or no such time.
 * @param digit the characters' codes, by place
 * @returns 0 to 2400 [HHMM]
 */
export function timeOfDay(digit: (place: number) => number, length: number): number {
  if (length !== 4) return Number.NaN;
  let time = 0;
  for (let place = 0; place < 4; place++) {
    const value = digit(place) - ZERO;
    if (!(value >= 0 && value <= 9)) return Number.NaN;
    time = time * 10 + value;
  }
  return time === 2400 || (time < 2400 && time % 100 < 60) ? time : Number.NaN;
}

/** The same of a text. */
export const timeOfDayIn = (text: string): number =>
  timeOfDay((place) => text.charCodeAt(place), text.length);
