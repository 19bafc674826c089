import { type Assumptions, assumptionsSchema } from '../../schema/assumptions.ts';
import type { Sheet } from '../../schema/sheet.ts';
import { MM_PER_INCH } from '../../units.ts';
import type { Say } from '../say.ts';

/** Every assumption that an answer rests on, with its value; one that the user changed says so. */
export function assumptionLines(assume: Assumptions, units: Say['wording']['units']): Sheet['inputs'] {
  const standard: Record<string, unknown> = assumptionsSchema.parse({});
  const used: Record<string, unknown> = assume;
  return Object.entries(assumptionsSchema.shape).map(([key, schema]) => {
    const { description = key, unit = '-' } = schema.meta() ?? {};
    const value = used[key];
    const changed = value === standard[key] ? '' : ' (changed)';
    return { label: description, value: `${shown(value, String(unit), units)}${changed}` };
  });
}

/** Factors that make numbers of metric units US ones, by the metric unit; what is said per °C stays so. */
const US_UNITS: Readonly<Record<string, readonly [factor: number, unit: string]>> = {
  mm: [1 / MM_PER_INCH, 'in'],
  '1/mm': [MM_PER_INCH, '1/in'],
};

function shown(value: unknown, unit: string, units: Say['wording']['units']): string {
  if (value === undefined) return 'that default';
  if (typeof value !== 'number') return String(value);
  if (unit === '0-1') return `${Number((value * 100).toPrecision(3))} %`;
  const [factor, name] = (units === 'us' && US_UNITS[unit]) || [1, unit];
  const number = Number((value * factor).toPrecision(3));
  return name === '-' ? `${number}` : `${number} ${name === 'd' ? 'days' : name}`;
}
