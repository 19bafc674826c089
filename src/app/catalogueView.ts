import { chooseInterval } from '../catalogue/chooseInterval.ts';
import { findActive } from '../catalogue/findActive.ts';
import { findCrop } from '../catalogue/findCrop.ts';
import { measureRow, rankDays, sayInterval } from '../catalogue/intervalLength.ts';
import { rowsOfPair } from '../catalogue/rowsOfPair.ts';
import { MissingDataError } from '../errors.ts';
import type { Active, Catalogue, Crop, IntervalRow } from '../schema/catalogue.ts';
import type { ActiveView, CatalogueList, CropInterval, IntervalRowView } from '../schema/catalogueView.ts';
import type { FieldCountry } from '../schema/codes.ts';
import type { Wording } from '../schema/wording.ts';
import { catalogueFigures } from './catalogueFigures.ts';
import { sourceIdsIn } from './citedSources.ts';
import { clauseWords } from './clauseWords.ts';
import { type Say, sayIn } from './say.ts';

/** The catalogue at a glance: its actives and its crops. */
export function catalogueList({ actives, crops, intervals }: Catalogue): CatalogueList {
  return {
    actives: actives.map(({ isoName, aliases, group, fieldHalfLifeDays, provenance }) => {
      const rows = intervals.filter(({ active }) => active === isoName);
      return {
        name: isoName,
        aliases,
        group,
        halfLifeDays: fieldHalfLifeDays?.typical ?? null,
        halfLifeMark: provenance.halfLifeTypical?.mark ?? null,
        intervalRows: rows.length,
        rowsSeen: rows.filter(({ mark }) => mark === 'seen').length,
      };
    }),
    crops: crops.map(({ name, botanicalName, aliases, kind, sensitivity, use }) => ({
      name,
      botanicalName,
      aliases,
      kind,
      sensitiveGroups: sensitivity?.groups ?? [],
      sensitivity: sensitivity?.text ?? null,
      harvestedFor: use.harvestedFor,
      grazedOrHayed: use.grazedOrHayed === 'yes',
      coverCrop: use.coverCrop === 'yes',
    })),
  };
}

/**
 * One active with its figures, sources and marks, and the crops by interval; with a crop, that crop alone and every
 * row behind it.
 * @throws {InvalidInputError} RESIDUAL_UNKNOWN, CROP_UNKNOWN
 */
export function catalogueActive(
  catalogue: Catalogue,
  name: string,
  {
    crop: cropName,
    country = 'US',
    ...wording
  }: Wording & { readonly crop?: string; readonly country?: FieldCountry } = {},
): ActiveView {
  const active = findActive(catalogue, name);
  const one = cropName === undefined ? null : findCrop(catalogue, cropName);
  const crops = (one ? [one] : catalogue.crops).map((crop) => cropInterval(catalogue, active, crop, country));
  const rows = one ? rowsOfPair(catalogue, active, one).map(({ row }) => rowView(row, sayIn(wording))) : [];
  const figures = catalogueFigures(active);
  const cautions = [...active.cautions];
  const words = [
    ...cautions,
    ...figures.map(({ value }) => String(value)),
    ...rows.map(({ note }) => note ?? ''),
    ...crops.flatMap(({ beside }) => beside),
  ];
  const cited = new Set([
    ...[...figures, ...rows].flatMap(({ sources }) => sources),
    ...words.flatMap(sourceIdsIn),
  ]);
  return {
    name: active.isoName,
    group: active.group,
    country,
    figures,
    cautions,
    crops: crops.sort((a, b) => lengthOf(a) - lengthOf(b)),
    rows,
    sources: catalogue.sources.filter(({ id }) => cited.has(id)),
  };
}

const lengthOf = ({ months, days }: CropInterval): number =>
  months === null || days === null ? Number.MAX_VALUE : rankDays({ months, days });

function cropInterval(catalogue: Catalogue, active: Active, crop: Crop, country: FieldCountry): CropInterval {
  try {
    const chosen = chooseInterval(catalogue, active, crop, country);
    const { months, days, atLeast, fromMemory, bioassay, fallBack, disagreement } = chosen;
    const beside = chosen.longerElsewhere.map(
      ({ row, interval }) =>
        `${row.kind === 'advice' ? 'Advice' : 'A field finding'} from ${row.region} asks for ${sayInterval(interval)} or more (${row.source}).`,
    );
    return {
      crop: crop.name,
      interval: chosen.text,
      ...{ months, days, atLeast, fromMemory, bioassay, fallBack, disagreement },
      beside: [...chosen.elsewhere, ...beside],
    };
  } catch (error) {
    if (!(error instanceof MissingDataError)) throw error;
    return {
      crop: crop.name,
      interval: null,
      ...{ months: null, days: null, atLeast: false, fromMemory: false, fallBack: null, disagreement: null },
      bioassay: error.details.bioassay === true,
      beside: [error.message],
    };
  }
}

function rowView(row: IntervalRow, say: Say): IntervalRowView {
  const measured = measureRow(row);
  const clauses = row.clauses.map((clause) => clauseWords(clause, say));
  const { rowId, cropOnSource, partners, kind, country, region, mark, source, note } = row;
  const ends = measured && [sayInterval(measured.shortest), sayInterval(measured.longest)];
  const open = measured !== null && row.maxMonths === null && row.maxDays === null;
  const interval = ends && (open ? `${ends[0]} or more` : ends[0] === ends[1] ? ends[0] : ends.join(' to '));
  return {
    rowId,
    cropOnSource,
    partners,
    kind,
    interval,
    conditions: [
      ...(row.rateConditionGramsPerHa && !row.clauses.some(({ kind }) => kind === 'rate')
        ? [`rate: ${say.ratesIn(row.rateConditionGramsPerHa)}`]
        : []),
      ...(row.variety ? [`${row.variety} varieties only`] : []),
      ...(row.condition && !clauses.some((words) => words.startsWith(`${row.condition};`))
        ? [row.condition]
        : []),
      ...clauses,
    ],
    country,
    region,
    mark,
    sources: [...new Set([source, ...row.clauses.flatMap(({ sources }) => sources)])],
    note,
  };
}
