/** Federal codes of states and territories with the letters that post and weather records use. */
const LETTERS =
  '01AL 02AK 04AZ 05AR 06CA 08CO 09CT 10DE 11DC 12FL 13GA 15HI 16ID 17IL 18IN 19IA 20KS 21KY 22LA 23ME 24MD 25MA 26MI 27MN 28MS 29MO 30MT 31NE 32NV 33NH 34NJ 35NM 36NY 37NC 38ND 39OH 40OK 41OR 42PA 44RI 45SC 46SD 47TN 48TX 49UT 50VT 51VA 53WA 54WV 55WI 56WY 60AS 66GU 69MP 72PR 78VI';

/** Letters of a state by its federal code. */
export const STATE_LETTERS: ReadonlyMap<string, string> = new Map(
  LETTERS.split(' ').map((pair) => [pair.slice(0, 2), pair.slice(2)]),
);

/** Letters of all states and territories. */
export const US_STATES: readonly string[] = [...STATE_LETTERS.values()].sort();

/**
 * Codes that a mistyped one of two letters may stand for: its own letters turned round, else all that begin as it does,
 * else all that end so. Every one of a code so short is near every other, so slips are not counted.
 * @example codesLike('TM', ['MN', 'MT', 'TX']) // ['MT']
 */
export function codesLike(given: string, codes: readonly string[]): readonly string[] {
  const [first = '', second = ''] = given;
  const turned = codes.filter((code) => code === second + first);
  if (turned.length > 0) return turned;
  const alike = codes.filter((code) => code[0] === first);
  return alike.length > 0 ? alike : codes.filter((code) => code[1] === second);
}
