import { type ClimateCache, createClimateCache } from './climateCache.ts';
import { packedReader } from './packedWeather.ts';
import type { PackedWeather } from './workshop.ts';

/** Most bytes of climates that a thread keeps between tasks. */
const BUDGET_BYTES = 96e6;
/** A day of a record and of all that is worked out from it: 5 integers, 10 numbers, 2 codes. [bytes] */
const BYTES_A_DAY = 5 * 4 + 10 * 8 + 2;

/** Climates that tasks of one list share: worked out by the first, kept for the next. */
export interface KeptClimates {
  /** @param id name of the packed records, the same for the same records alone */
  of(id: string, weather: PackedWeather): ClimateCache;
}

/** Keeps the last climates within a number of bytes, the latest always. */
export function keepClimates(budgetBytes: number = BUDGET_BYTES): KeptClimates {
  const kept = new Map<string, { readonly climates: ClimateCache; readonly bytes: number }>();
  let held = 0;
  return {
    of(id, weather) {
      const found = kept.get(id) ?? {
        climates: createClimateCache(packedReader(weather)),
        bytes: bytesOf(weather),
      };
      if (!kept.delete(id)) held += found.bytes;
      kept.set(id, found);
      for (const [oldest, { bytes }] of kept) {
        if (held <= budgetBytes || oldest === id) break;
        kept.delete(oldest);
        held -= bytes;
      }
      return found.climates;
    },
  };
}

const bytesOf = ({ records }: PackedWeather): number =>
  records.reduce((sum, { rainTenthsMm }) => sum + rainTenthsMm.length * BYTES_A_DAY, 0);
