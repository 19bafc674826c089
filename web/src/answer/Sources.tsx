import type { Answer } from '../api/contract.ts';
import { useDates } from '../units/useDates.ts';

/** Where weather and interval come from, and which model reckoned. Short enough to stay open. */
export function Sources({ answer }: { answer: Answer }) {
  const dates = useDates();
  const { weather, model, inputs } = answer;
  const { interval } = inputs;
  const { help } = weather;
  const lender = help?.temperatureStation;
  const filled = [
    `${Number(weather.missingRainPercent.toFixed(2))} % of its days lack rain`,
    weather.spreadRainDays > 0 && `${weather.spreadRainDays} days share a total of several days`,
    weather.filledTemperatureDays > 0 && `${weather.filledTemperatureDays} days have a filled temperature`,
    lender && `temperatures are those of ${lender.name}`,
    help?.neighbourRainDays > 0 &&
      `${help.neighbourRainDays} days of rain come from ${help.rainNeighbours.map(({ name }) => name).join(', ')}`,
    help?.gaugeDays > 0 && `${help.gaugeDays} days come from your own gauge`,
    help?.gaugeDaysOutside > 0 &&
      `${help.gaugeDaysOutside} gauge days lie outside the record and are not used`,
  ].filter(Boolean);
  return (
    <section class="sources" aria-labelledby="sources-title">
      <h2 id="sources-title">Sources</h2>
      <p>
        Weather: {weather.station.name}, {dates.full(weather.firstDate)} to {dates.full(weather.lastDate)}
        {weather.station.invented ? ', an invented record' : `, from ${weather.source}`};{' '}
        {weather.yearsUsed > 0 &&
          `${weather.yearsUsed} years used, ${weather.firstYear} to ${weather.lastYear}; `}
        {filled.join('; ')}.
      </p>
      <p>
        Rotation interval: {interval.text},{' '}
        {interval.confirmed
          ? 'from your own label'
          : interval.fromMemory
            ? 'from memory, without a source, not confirmed from a label'
            : 'from the catalogue, not confirmed from a label'}
        . {interval.sources.join('; ')}
        {interval.sources.length > 0 && '. '}
        {interval.disagreement}
      </p>
      <p>
        {model.name}, version {model.version}.
      </p>
    </section>
  );
}
