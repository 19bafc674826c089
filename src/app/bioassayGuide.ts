import { findActive } from '../catalogue/findActive.ts';
import { findCrop } from '../catalogue/findCrop.ts';
import { titleOf } from '../catalogue/titleOf.ts';
import type { BioassayEntry, BioassayGuide, GuideLine } from '../schema/bioassay.ts';
import type { Active, Catalogue, Crop } from '../schema/catalogue.ts';
import { type Say, sayIn } from './say.ts';

/** How deep the soil is taken. */
const DEPTHS = { us: '2 to 4 inches', metric: '5 to 10 cm' };
/** Most species that a guide names beside the crop itself. */
const MOST_INDICATORS = 3;

/**
 * How to run a field bioassay for one residual before one crop: when, where, how deep, what to sow, how to read it, what
 * it does not tell. An indicator is one that the catalogue names for the active or its group; where it names none, crops
 * that residues of the group usually hurt.
 *
 * @throws {InvalidInputError} RESIDUAL_UNKNOWN, CROP_UNKNOWN
 * @example bioassayGuide(catalogue, 'imazethapyr', 'lentil').species[0].crop // 'lentil'
 */
export function bioassayGuide(
  catalogue: Catalogue,
  residual: string,
  cropName: string,
  say: Say = sayIn(),
): BioassayGuide {
  const depth = DEPTHS[say.wording.units];
  const active = findActive(catalogue, residual);
  const crop = findCrop(catalogue, cropName);
  const told = catalogue.bioassay.filter((entry) => speaksOf(entry, active));
  const titled = ({ text, mark, sources }: BioassayEntry): GuideLine => ({
    text: text.replace('{depth}', depth),
    mark,
    sources: titlesOf(sources, catalogue),
  });
  const linesOf = (...parts: BioassayEntry['part'][]) =>
    parts.flatMap((part) => told.filter((entry) => entry.part === part).map(titled));
  const species = [
    { crop: crop.name, reason: 'the crop that is to follow', mark: null, sources: [] },
    ...indicatorsOf(active, crop, catalogue),
  ];
  const lines = {
    when: linesOf('when'),
    where: linesOf('where', 'check'),
    depth: linesOf('depth'),
    steps: linesOf('sow', 'grow'),
    reading: linesOf('reading'),
    limits: linesOf('limits'),
  };
  const cited = [...Object.values(lines).flat(), ...species].flatMap(({ sources }) => sources);
  return {
    title: `Field bioassay: ${active.isoName} before ${crop.name}`,
    residual: active.isoName,
    group: String(active.group),
    crop: crop.name,
    brief: briefOf(
      species.map((one) => one.crop),
      depth,
    ),
    worth:
      'A field bioassay is worth doing where the odds are neither low nor high: over your limit, and not so high that waiting or another crop is plainly wiser.',
    ...lines,
    species,
    sources: [...new Set(cited)],
  };
}

/** The guide in two sentences, for an answer; null where the residual or crop is not in the catalogue. */
export function bioassayBrief(
  active: Active | null,
  crop: Crop | null,
  catalogue: Catalogue,
  say?: Say,
): string | null {
  return active === null || crop === null
    ? null
    : bioassayGuide(catalogue, active.isoName, crop.name, say).brief;
}

function speaksOf({ groups, actives }: BioassayEntry, { isoName, group }: Active): boolean {
  if (groups === undefined && actives === undefined) return true;
  return (groups?.includes(String(group)) ?? false) || (actives?.includes(isoName) ?? false);
}

function indicatorsOf(active: Active, crop: Crop, catalogue: Catalogue): BioassayGuide['species'] {
  const named = catalogue.bioassay.flatMap((entry) =>
    entry.crop !== undefined && entry.crop !== crop.name && speaksOf(entry, active)
      ? [{ crop: entry.crop, reason: entry.text, mark: entry.mark, sources: entry.sources }]
      : [],
  );
  const sensitive = catalogue.crops.flatMap(({ name, sensitivity }) =>
    sensitivity !== null && name !== crop.name && sensitivity.groups.includes(String(active.group))
      ? [{ crop: name, reason: sensitivity.text, mark: sensitivity.mark, sources: sensitivity.sources }]
      : [],
  );
  return (named.length > 0 ? named : sensitive)
    .slice(0, MOST_INDICATORS)
    .map((one) => ({ ...one, sources: titlesOf(one.sources, catalogue) }));
}

const titlesOf = (ids: readonly string[], { sources }: Catalogue): string[] =>
  ids.map((id) => titleOf(id, sources));

function briefOf(crops: readonly string[], depth: string): string {
  const [own, ...others] = crops;
  const sown = others.length === 0 ? own : `${own} and, as indicators, ${others.join(', ')}`;
  return `Sow ${sown} in soil from the top ${depth}, ordinary and risky ground apart, beside soil of the same kind that was never sprayed. Compare after two to three weeks; a clean pot is weak evidence and never shortens the label’s interval.`;
}
