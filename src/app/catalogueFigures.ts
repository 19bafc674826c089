import type { Active } from '../schema/catalogue.ts';
import type { Figure } from '../schema/catalogueView.ts';
import type { Provenance } from '../schema/provenance.ts';

/** Every figure that is held of an active, with unit, mark and sources, in the order of reading. */
export function catalogueFigures(active: Active): Figure[] {
  const { provenance: from, fieldHalfLifeDays: life, kocMlPerG: koc, typicalRateGramsPerHa: rate } = active;
  const figure = (
    name: string,
    value: number | string | null | undefined,
    unit: string,
    provenance: Provenance | null,
  ): Figure[] =>
    value === null || value === undefined || provenance === null
      ? []
      : [{ name, value, unit, ...provenance }];
  return [
    ...figure('Mode-of-action group', active.group, '', from.group),
    ...figure('Half-life, typical', life?.typical, 'd', from.halfLifeTypical),
    ...figure('Half-life, shortest', life?.low, 'd', from.halfLifeLow),
    ...figure('Half-life, longest', life?.high, 'd', from.halfLifeHigh),
    ...figure('Sorption, Koc', koc && rangeWithTypical(koc), 'mL/g', from.koc),
    ...figure('Usual rate', rate && rangeOf(rate.low, rate.high), 'g/ha', from.typicalRate),
    ...figure(
      active.topRateBasis === 'label' ? 'Top rate, from a label' : 'Top rate, the upper usual one',
      active.topRateGramsPerHa,
      'g/ha',
      from.topRate,
    ),
    ...figure('Main loss', active.mainLossRoute, '', from.mainLossRoute),
    ...figure('Moisture exponent of its own', active.moistureExponent, '', from.moistureExponent),
    ...figure('Q10 of its own', active.q10, '', from.q10),
    ...phFigures(active),
    ...figure('For people', active.handling, '', from.handling),
  ];
}

function phFigures({ ph }: Active): Figure[] {
  if (ph === null) return [];
  const { mark, sources } = ph;
  const from = { unit: '', mark, sources };
  return [
    { name: 'Soil pH', value: `${ph.words}; ${ph.caution}`, ...from },
    ...(ph.injury ? [{ name: 'Soil pH and injury', value: ph.injury, ...from }] : []),
    ...(ph.kind === 'slope'
      ? [
          {
            name: 'Half-life factor per pH unit',
            value: `${ph.factorPerUnit} above and below pH ${ph.referencePh}, from pH ${ph.lowPh} to ${ph.highPh}`,
            ...from,
          },
        ]
      : []),
    ...(ph.kind === 'steps'
      ? [{ name: 'Half-life factor by pH', value: ph.steps.map(stepWords).join(', '), ...from }]
      : []),
    ...(ph.basis ? [{ name: 'Behind the pH figures', value: ph.basis, ...from }] : []),
  ];
}

const stepWords = ({ fromPh, toPh, factor }: { fromPh?: number; toPh?: number; factor: number }): string =>
  fromPh === undefined
    ? `${factor} below ${toPh}`
    : toPh === undefined
      ? `${factor} from ${fromPh} on`
      : `${factor} from ${fromPh} to ${toPh}`;

const rangeOf = (low: number, high: number): number | string => (low === high ? low : `${low} to ${high}`);

function rangeWithTypical({ typical, low, high }: NonNullable<Active['kocMlPerG']>): number | string | null {
  const span = low === null || high === null ? null : rangeOf(low, high);
  if (typical === null) return span;
  return span === null ? typical : `${typical} (${span})`;
}
