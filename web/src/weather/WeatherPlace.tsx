import { useLocation } from '../shell/places.ts';
import { useUnits } from '../units/useUnits.ts';
import { Overview } from './Overview.tsx';
import { StationView } from './StationView.tsx';
import { readWeatherAddress } from './weatherAddress.ts';
import '../style/weather.css';

/** The weather records: all stations, or one of them. */
export function WeatherPlace() {
  const { search } = useLocation();
  const units = useUnits();
  const asked = readWeatherAddress(search);
  return asked.station !== null ? (
    <StationView key={asked.station} id={asked.station} units={units} />
  ) : (
    <Overview asked={asked} units={units} />
  );
}
