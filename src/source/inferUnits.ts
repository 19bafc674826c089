import type { UnitSystem } from '../schema/readOptions.ts';
import type { Seen, Tally, UnitEvidence } from './unitEvidence.ts';
import { UNIT_SYSTEMS } from './unitSystem.ts';

/** Systems that the values leave open, and why each other one is ruled out. */
export interface UnitFinding {
  readonly open: readonly UnitSystem[];
  /** Why a system is ruled out; undefined where it is not. */
  readonly grounds: Readonly<Partial<Record<UnitSystem, string>>>;
}

/** Values needed before the way all of them are written counts as a habit. */
const FEW = 5;
/** Temperatures of about a year. */
const YEARFUL = 300;

/** No day on land was wetter, warmer or colder, with room to spare; in each system's own units. */
const LIMITS: Record<UnitSystem, { rain: number; warm: number; cold: number }> = {
  us: { rain: 80, warm: 140, cold: -130 },
  metric: { rain: 2000, warm: 60, cold: -90 },
  tenths: { rain: 20_000, warm: 600, cold: -900 },
};
const RAIN_WORDS: Record<UnitSystem, string> = { us: 'in', metric: 'mm', tenths: 'tenths of mm' };
const TEMP_WORDS: Record<UnitSystem, string> = { us: '°F', metric: '°C', tenths: 'tenths of °C' };

/**
 * Which unit systems a file's values allow. First nature decides: values that no weather reaches, and decimals, which
 * tenths never have. Where more than one system is left, the habits of the public services decide: inches come with
 * hundredths, mm with tenths, °F whole.
 */
export function inferUnits(evidence: UnitEvidence): UnitFinding {
  const grounds: Partial<Record<UnitSystem, string>> = {};
  const rule = (check: (system: UnitSystem) => string | null) => {
    for (const system of UNIT_SYSTEMS) {
      const ground = grounds[system] ?? check(system);
      if (ground !== null) grounds[system] = ground;
    }
    return UNIT_SYSTEMS.filter((system) => grounds[system] === undefined);
  };
  const natural = rule((system) => againstNature(system, evidence));
  if (natural.length <= 1) return { open: natural, grounds };
  return { open: rule((system) => againstHabit(system, evidence)), grounds };
}

/** Why a file cannot be in these units; null where it can. */
export function againstNature(system: UnitSystem, { rain, temperature }: UnitEvidence): string | null {
  const { rain: most, warm, cold } = LIMITS[system];
  const decimal = rain.mostDecimals ?? temperature.mostDecimals;
  if (system === 'tenths' && decimal) return `${at(decimal)} has decimals, which tenths do not`;
  if (beyond(rain.highest, most)) return `rain of ${at(rain.highest)} is too much for ${RAIN_WORDS[system]}`;
  if (beyond(temperature.highest, warm)) {
    return `a temperature of ${at(temperature.highest)} is too high for ${TEMP_WORDS[system]}`;
  }
  if (temperature.lowest !== null && temperature.lowest.value < cold) {
    return `a temperature of ${at(temperature.lowest)} is too low for ${TEMP_WORDS[system]}`;
  }
  return null;
}

function againstHabit(system: UnitSystem, { rain, temperature }: UnitEvidence): string | null {
  switch (system) {
    case 'us':
      if (rain.wet >= FEW && rain.decimals < 2) {
        return `none of ${rain.wet} rainy days has hundredths, with which inches are given`;
      }
      return temperature.count >= FEW && temperature.mostDecimals
        ? `a temperature of ${at(temperature.mostDecimals)} has decimals, which °F are given without`
        : null;
    case 'metric':
      if (rain.mostDecimals && rain.decimals >= 2) {
        return `rain of ${at(rain.mostDecimals)} has hundredths, which mm are given without`;
      }
      return wholeAndLarge(rain)
        ? `none of ${rain.wet} rainy days has decimals, with which mm are given, and the most is ${at(rain.highest)}`
        : null;
    case 'tenths':
      return temperature.count >= YEARFUL && !beyond(temperature.highest, LIMITS.us.warm)
        ? `none of ${temperature.count} temperatures is above ${LIMITS.us.warm}, which would be 14 °C`
        : null;
  }
}

/** More than 200 mm in a day, were it mm, yet never a decimal. */
const wholeAndLarge = (rain: Tally): boolean =>
  rain.wet >= FEW && rain.decimals === 0 && beyond(rain.highest, 200);

const beyond = (seen: Seen | null, limit: number): boolean => seen !== null && seen.value > limit;

const at = (seen: Seen | null): string => (seen === null ? '' : `${seen.text} (line ${seen.line})`);
