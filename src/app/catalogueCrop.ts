import { findCrop } from '../catalogue/findCrop.ts';
import { rankDays } from '../catalogue/intervalLength.ts';
import type { Catalogue, Crop } from '../schema/catalogue.ts';
import type { CropView } from '../schema/catalogueCropView.ts';
import type { Figure } from '../schema/catalogueView.ts';
import type { FieldCountry } from '../schema/codes.ts';
import { catalogueActive } from './catalogueView.ts';

/**
 * One crop with what is known of it, and the actives before it by interval.
 * @throws {InvalidInputError} CROP_UNKNOWN
 */
export function catalogueCrop(catalogue: Catalogue, name: string, country: FieldCountry = 'US'): CropView {
  const crop = findCrop(catalogue, name);
  const actives = catalogue.actives.map(({ isoName, group }) => {
    const { crops } = catalogueActive(catalogue, isoName, { crop: crop.name, country });
    return { ...crops[0], active: isoName, group };
  });
  const figures = cropFigures(crop);
  const cited = new Set(figures.flatMap(({ sources }) => sources));
  return {
    name: crop.name,
    botanicalName: crop.botanicalName,
    kind: crop.kind,
    aliases: [...crop.aliases],
    country,
    figures,
    actives: actives.sort((a, b) => lengthOf(a) - lengthOf(b)),
    sources: catalogue.sources.filter(({ id }) => cited.has(id)),
  };
}

const lengthOf = ({ months, days }: CropView['actives'][number]): number =>
  months === null || days === null ? Number.MAX_VALUE : rankDays({ months, days });

function cropFigures({ sensitivity, use }: Crop): Figure[] {
  const { mark, sources } = use;
  return [
    ...(sensitivity
      ? [
          {
            name: 'What residues do to it',
            value: sensitivity.text,
            unit: '',
            mark: sensitivity.mark,
            sources: sensitivity.sources,
          },
        ]
      : []),
    { name: 'Harvested for', value: use.harvestedFor, unit: '', mark, sources },
    { name: 'Often grazed or hayed', value: use.grazedOrHayed, unit: '', mark, sources },
    { name: 'Often sown as a cover crop', value: use.coverCrop, unit: '', mark, sources },
  ];
}
