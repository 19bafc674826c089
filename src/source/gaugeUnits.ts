import { InvalidInputError } from '../errors.ts';
import type { UnitSystem } from '../schema/readOptions.ts';
import { type GaugeColumns, unitInName } from './gaugeColumns.ts';
import { againstNature } from './inferUnits.ts';
import type { UnitEvidence } from './unitEvidence.ts';
import { UNIT_SYSTEMS, UNIT_WORDS, unitChoices } from './unitSystem.ts';

/** Units of a gauge file's columns, and what shows them. */
export interface GaugeUnits {
  readonly rain: UnitSystem;
  readonly temperature: UnitSystem;
  readonly note: string;
}

/**
 * Units of rain and temperatures from the names of their columns or as declared; asked for otherwise.
 * @throws {InvalidInputError} UNITS_UNKNOWN where neither says; UNITS_CONFLICT where a name and the declared units
 * differ, names differ among themselves, or values cannot be in the units the names give
 */
export function gaugeUnits(
  { rainAt, maxTempAt, minTempAt }: GaugeColumns,
  header: readonly string[],
  evidence: UnitEvidence,
  declared: UnitSystem | undefined,
  fileName: string,
): GaugeUnits {
  const temperatureAt = [maxTempAt, minTempAt].filter((at) => at >= 0);
  const named = [rainAt, ...temperatureAt].flatMap((at) => {
    const units = unitInName(header[at]);
    return units === undefined ? [] : [{ at, units }];
  });
  const conflict = (what: string, hint: string) =>
    new InvalidInputError('UNITS_CONFLICT', `${fileName}: ${what}.`, { hint, details: { file: fileName } });
  const other = declared === undefined ? undefined : named.find(({ units }) => units !== declared);
  if (declared !== undefined && other !== undefined) {
    throw conflict(
      `its column "${header[other.at]}" names ${UNIT_WORDS[other.units]}, but ${UNIT_WORDS[declared]} were declared`,
      'Leave --units-in off for this file, or rename the column.',
    );
  }
  if (declared !== undefined) {
    const doubt = againstNature(declared, evidence);
    const but = doubt === null ? '' : `, although ${doubt}`;
    return {
      rain: declared,
      temperature: declared,
      note: `Values taken as ${UNIT_WORDS[declared]}, as declared${but}`,
    };
  }
  const rainNamed = named.find(({ at }) => at === rainAt)?.units;
  const temperatures = new Set(named.filter(({ at }) => at !== rainAt).map(({ units }) => units));
  if (temperatures.size > 1) {
    throw conflict('its temperature columns name different units', 'Give both temperatures in one unit.');
  }
  if (rainNamed === undefined) {
    const open = UNIT_SYSTEMS.filter((system) => againstNature(system, evidence) === null);
    throw new InvalidInputError(
      'UNITS_UNKNOWN',
      `${fileName}: its column "${header[rainAt]}" does not say its unit.`,
      {
        hint: `Say which it is: ${unitChoices(open.length === 0 ? undefined : open)}; or name the column "rain in" or "rain mm".`,
        details: { file: fileName, choices: open },
      },
    );
  }
  const temperature = [...temperatures][0] ?? rainNamed;
  for (const [system, tallies] of [
    [rainNamed, { ...evidence, temperature: NO_VALUES }],
    [temperature, { ...evidence, rain: NO_VALUES }],
  ] as const) {
    const doubt = againstNature(system, tallies);
    if (doubt !== null) throw conflict(doubt, `Correct the value, or say the units: ${unitChoices()}.`);
  }
  return {
    rain: rainNamed,
    temperature,
    note: noteOf(rainNamed, temperatures.size > 0, temperature, temperatureAt),
  };
}

const NO_VALUES = { highest: null, lowest: null, mostDecimals: null } as UnitEvidence['rain'];

function noteOf(
  rain: UnitSystem,
  temperatureNamed: boolean,
  temperature: UnitSystem,
  temperatureAt: readonly number[],
): string {
  const [rainUnit] = UNIT_WORDS[rain].split(' and ');
  const [, tempUnit] = UNIT_WORDS[temperature].split(' and ');
  if (temperatureAt.length === 0) return `Rain taken as ${rainUnit}, as its column says`;
  return temperatureNamed
    ? `Rain taken as ${rainUnit} and temperatures as ${tempUnit}, as their columns say`
    : `Rain taken as ${rainUnit}, as its column says, and temperatures, whose columns do not say, as ${tempUnit}`;
}
