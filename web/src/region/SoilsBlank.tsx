import { Blank, blankIds } from '../question/Blank.tsx';
import { useBlank } from '../question/useBlank.ts';
import { readSoils, type StationSoils, saySoils } from './stationSoils.ts';

interface SoilsBlankProps {
  readonly soils: StationSoils | null;
  readonly commit: (soils: StationSoils | null) => void;
}

/** A soil for each station, one a line; elsewhere the soil of the question stands. */
export function SoilsBlank({ soils, commit }: SoilsBlankProps) {
  const { input, problem } = useBlank<StationSoils | null>({
    field: 'soilByStation',
    shown: saySoils(soils),
    read: readSoils,
    commit,
  });
  const { onKeyDown: _, ...rest } = input;
  const remark =
    'One station a line: its id as in the CSV file, a comma, its texture class. Stations not named here have the soil above.';
  return (
    <Blank id="blank-soils" label="Soil by station" remark={remark} problem={problem}>
      <textarea
        {...blankIds('blank-soils', { remark, problem })}
        {...rest}
        rows={4}
        spellcheck={false}
        data-testid="soils"
      />
    </Blank>
  );
}
