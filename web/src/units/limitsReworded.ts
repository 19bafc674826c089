import { ASSUMPTIONS } from '../../../src/schema/assumptionList.ts';
import { fieldUnit } from '../../../src/schema/fieldNames.ts';
import type { Problem } from '../api/contract.ts';
import { type Quantity, shownNumber, type Units } from './units.ts';

/** How a field's number stands in the blanks of the page: its kind, and the unit behind it. */
interface Shown {
  readonly quantity: Quantity;
  readonly unit: Readonly<Record<Units, string>>;
}

/** By the unit that the server gives, which is metric. */
const BY_UNIT: Readonly<Record<string, Shown>> = {
  ' mm': { quantity: 'rain', unit: { us: ' in', metric: ' mm' } },
  ' m': { quantity: 'height', unit: { us: ' ft', metric: ' m' } },
  ' cm': { quantity: 'depth', unit: { us: ' in', metric: ' cm' } },
  ' ha': { quantity: 'area', unit: { us: ' acres', metric: ' ha' } },
  ' g/ha': { quantity: 'rate', unit: { us: ' oz/acre', metric: ' g/ha' } },
};
const same = (unit: string) => ({ us: unit, metric: unit });
/** Those that the server takes as a share and the page does not. */
const BY_KEY: Readonly<Record<string, Shown>> = {
  oddsLimit: { quantity: 'twentieths', unit: same(' in 20') },
  rateFraction: { quantity: 'fraction', unit: same(' %') },
  coverFraction: { quantity: 'fraction', unit: same(' %') },
  canopyFraction: { quantity: 'fraction', unit: same(' %') },
  restOfSeasonRain: { quantity: 'fraction', unit: same(' %') },
};

function shownAs(field: string): Shown | undefined {
  const key = field.split('.').at(-1) ?? '';
  const assumption = ASSUMPTIONS.find((one) => field === `assume.${one.key}`);
  if (assumption === undefined) return BY_KEY[key] ?? BY_UNIT[fieldUnit(field)];
  const { quantity, unit } = assumption;
  return { quantity, unit: { us: ` ${unit.us}`, metric: ` ${unit.metric}` } };
}

const NUMBER = String.raw`(-?\d+(?:\.\d+)?(?:e[+-]?\d+)?)`;
const GIVEN = new RegExp(`“${NUMBER}” is too (small|large)`);
const LIMIT = new RegExp(`(at least|at most|more than|less than) ${NUMBER}( (?:mm|m|cm|ha|g/ha))?\\.`);

/**
 * A refusal of a number past its limits, as the page shows that number: a link holds metric amounts and shares, blanks
 * those of the reader's units and per cent. Others come back as they are.
 */
export function limitsReworded<
  T extends Pick<Problem, 'message' | 'hint'> & Partial<Pick<Problem, 'details'>>,
>(problem: T, units: Units): T {
  const field = problem.details?.field;
  const shown = typeof field === 'string' ? shownAs(field) : undefined;
  if (shown === undefined || !GIVEN.test(problem.message)) return problem;
  const said = (stored: string) =>
    `${shownNumber(Number(stored), shown.quantity, units)}${shown.unit[units]}`;
  return {
    ...problem,
    message: problem.message.replace(GIVEN, (_, given, way) => `“${said(given)}” is too ${way}`),
    hint: problem.hint.replace(LIMIT, (_, bound, limit) => `${bound} ${said(limit)}.`),
  };
}
