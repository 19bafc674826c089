import { DrywakeError } from '../errors.ts';
import type { FetchSummary } from '../schema/fetchSummary.ts';
import type { BroughtUp } from '../schema/fieldAnswer.ts';
import type { StationExtent } from '../schema/weather.ts';
import { count } from './words.ts';

/** Ids as the public records service writes them. */
const SERVICE_ID = /^[A-Z]{2}[A-Z0-9_-]{9}$/;

/** Where newer weather comes from. */
export interface NewerWeather {
  stations(): Promise<readonly StationExtent[]>;
  /** Fetches a station's record and imports it. */
  fetch(stationId: string): Promise<FetchSummary>;
}

/** What is told where newer weather was not asked for. */
export const NOT_ASKED: BroughtUp = {
  fetched: false,
  stations: [],
  text: 'Newer weather was not asked for; the answers rest on the records that are here.',
};

/**
 * Brings records of the public service up to date, one after the other; own and invented records are left alone. Once
 * the service cannot be reached no further station is asked for.
 * @param ids stations in use
 */
export async function bringUp(ids: readonly string[], weather: NewerWeather): Promise<BroughtUp> {
  const invented = new Set((await weather.stations()).filter((one) => one.invented).map(({ id }) => id));
  const wanted = ids.filter((id) => SERVICE_ID.test(id) && !invented.has(id));
  const told = new Map<string, string>();
  let unreachable: string | null = null;
  let brought = 0;
  for (const id of wanted) {
    if (unreachable !== null) break;
    try {
      const { files, fetched } = await weather.fetch(id);
      const failure = files
        .map(({ problem, imported }) => problem ?? imported?.problem ?? null)
        .find(Boolean);
      told.set(
        id,
        failure?.message ?? (fetched > 0 ? 'Fetched and imported.' : 'Nothing newer at the service.'),
      );
      if (!failure) brought++;
    } catch (error) {
      if (!(error instanceof DrywakeError)) throw error;
      told.set(id, error.message);
      if (error.kind === 'source-failed') unreachable = error.message;
    }
  }
  const last = new Map((await weather.stations()).map(({ id, lastDate }) => [id, lastDate]));
  return {
    fetched: true,
    stations: ids.map((id) => ({
      id,
      lastDate: last.get(id) ?? null,
      text:
        told.get(id) ??
        (wanted.includes(id) ? 'Not asked for any more.' : 'Not a record of the public service.'),
    })),
    text:
      unreachable !== null
        ? `The public records service did not answer, so the answers rest on the records that are here, which are as they were. ${unreachable}`
        : wanted.length === 0
          ? 'No field uses a station of the public records service.'
          : `${brought} of ${count(wanted.length, 'station')} brought up to date from the public records service.`,
  };
}
