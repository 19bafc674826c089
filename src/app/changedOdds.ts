import type { Application } from '../analysis/applications.ts';
import { type SeasonOdds, seasonOdds } from '../analysis/seasonOdds.ts';
import type { SeasonQuestion } from '../analysis/seasonQuestion.ts';
import { isoDateOf, parseIsoDate } from '../calendar.ts';
import { phFactor } from '../model/breakdown/phFactor.ts';
import { treatmentLoad } from '../model/deposit/soilLoad.ts';
import type { Alternatives } from '../schema/alternatives.ts';
import { carryingApplications, fieldLabelDay, mainApplications } from './fieldTreatments.ts';
import type { ResolvedQuestion } from './resolveQuestion.ts';
import { seasonQuestionOf } from './seasonQuestionOf.ts';
import type { StationWeather } from './stationWeather.ts';

/** Overlaps that are looked at: none, half a pass, a whole one. */
const OVERLAPS = [1, 1.5, 2];
/** Zones of soil pH that are looked at. */
const PH_ZONES = [5.5, 6, 6.5, 7, 7.5, 8, 8.5];

/** The odds as asked, and what other doses and soils make of them. */
export type ChangedOdds = Pick<Alternatives, 'asAsked' | 'overlap' | 'soilPh'>;

/** The question as it was asked, with other overlaps, and in other zones of pH. */
export function changedOdds(resolved: ResolvedQuestion, { climate }: StationWeather): ChangedOdds {
  const { plantDay, question } = resolved;
  const labelDay = fieldLabelDay(resolved);
  const labelDate = isoDateOf(labelDay);
  const main = mainApplications(resolved);
  if (carryingApplications(resolved).length === 0) {
    const waitDays = Math.max(0, labelDay - plantDay);
    return {
      asAsked: { labelDate, clearDate: labelDate, waitDays, oddsAtPlanting: null },
      overlap: [],
      soilPh: [],
    };
  }
  const asked = seasonQuestionOf(resolved, climate.series);
  // Evidence tells of the soil it was taken from, whatever overlap or pH is looked at.
  const oddsWith = (change: (one: Application, index: number) => Application) =>
    seasonOdds(climate, {
      ...asked,
      applications: asked.applications.map((one, index) => (index < main ? change(one, index) : one)),
      sampled: asked.applications,
    } satisfies SeasonQuestion);
  const told = (odds: SeasonOdds) => ({
    oddsAtPlanting: odds.oddsAtPlanting,
    clearDate: odds.clearOffset === null ? null : isoDateOf(odds.firstDay + odds.clearOffset),
  });
  // Overlap doubles every active of a product; pH acts on the one whose response is known.
  const withLoad = (load: number) => oddsWith((one) => ({ ...one, load }));
  const plain = seasonOdds(climate, asked);
  return {
    asAsked: {
      labelDate,
      ...told(plain),
      waitDays: plain.clearOffset === null ? null : Math.max(0, plain.clearOffset - plain.plantOffset),
    },
    overlap:
      resolved.halfLife.halfLifeDays === null
        ? []
        : OVERLAPS.map((overlapFactor) => ({
            overlapFactor,
            ...told(withLoad(treatmentLoad(question.rateFraction, overlapFactor))),
          })),
    soilPh: phZones(resolved).map(({ soilPh, halfLifeFactor }) => ({
      soilPh,
      halfLifeFactor,
      ...told(oddsWith((one, index) => (index === 0 ? { ...one, siteFactor: halfLifeFactor } : one))),
    })),
  };
}

function phZones({ active }: ResolvedQuestion): { soilPh: number; halfLifeFactor: number }[] {
  const ph = active?.ph ?? null;
  if (ph === null || ph.kind === 'direction') return [];
  return PH_ZONES.map((soilPh) => ({ soilPh, halfLifeFactor: phFactor(ph, soilPh) }));
}

/**
 * Of several species of a mix the worst: the highest odds, the last label date, and the last day on which any clears. A
 * change that is not known of a species that carries residue is not told of the mix.
 */
export function worstOf(all: readonly ChangedOdds[], plantOn: string): ChangedOdds {
  if (all.length === 1) return all[0];
  const carrying = all.filter(({ asAsked }) => asAsked.oddsAtPlanting !== null);
  const asAsked = {
    ...worst(all.map((one) => one.asAsked)),
    labelDate: latest(all.map((one) => one.asAsked.labelDate)),
  };
  const { clearDate } = asAsked;
  const waitDays = clearDate === null ? null : Math.max(0, parseIsoDate(clearDate) - parseIsoDate(plantOn));
  const sameOf = <T extends Told>(lists: readonly (readonly T[])[]): T[] => {
    const [first = [], ...more] = lists;
    if (more.some(({ length }) => length !== first.length)) return [];
    return first.map((one, index) => ({ ...one, ...worst(lists.map((list) => list[index])) }));
  };
  return {
    asAsked: { ...asAsked, waitDays },
    overlap: sameOf(carrying.map(({ overlap }) => overlap)),
    soilPh: sameOf(carrying.map(({ soilPh }) => soilPh)),
  };
}

type Told = Pick<Alternatives['asAsked'], 'oddsAtPlanting' | 'clearDate'>;

function worst(all: readonly Told[]): Told {
  const odds = all.flatMap(({ oddsAtPlanting }) => (oddsAtPlanting === null ? [] : [oddsAtPlanting]));
  const dates = all.map(({ clearDate }) => clearDate);
  return {
    oddsAtPlanting: odds.length === 0 ? null : Math.max(...odds),
    clearDate: dates.includes(null) ? null : latest(dates.filter((date) => date !== null)),
  };
}

const latest = (dates: readonly string[]): string => dates.toSorted()[dates.length - 1];
