import { editDistance } from '../catalogue/spelling.ts';
import { InvalidInputError } from '../errors.ts';
import type { County } from '../schema/place.ts';
import { codesLike } from '../schema/usStates.ts';
import { meantOf } from './meant.ts';

/** Choices named in a refusal. */
const NAMED = 12;
/** Letters by which a misspelt name may differ for it to be offered. */
const SLIPS = 2;

/** Words behind a name that only say what kind of area it is. */
const KIND =
  /(?<!\s)\s+(county|parish|borough|census area|municipality|municipio|city and borough|island|city)$/i;

/**
 * The county that a user means by "Gallatin, MT", "Gallatin County, Montana", "St Louis city, MO" or a five-digit
 * federal code. Case, accents, blanks and points do not matter; without a state the name must occur once in the country.
 *
 * @throws {InvalidInputError} COUNTY_UNKNOWN with the names most like it; COUNTY_AMBIGUOUS with the choices
 */
export function findCounty(counties: readonly County[], text: string): County {
  const [given, stateGiven = ''] = splitAtLast(text.trim(), ',');
  const inState = stateGiven === '' ? counties : counties.filter((county) => isState(county, stateGiven));
  if (inState.length === 0) {
    throw new InvalidInputError('COUNTY_UNKNOWN', `"${stateGiven}" is no state of the United States.`, {
      hint: `${stateMeant(counties, stateGiven)}Write the county with its state, for example "Gallatin, MT".`,
      details: { field: 'county' },
    });
  }
  const found = [...matches(inState, given)];
  if (found.length === 1) return found[0];
  if (found.length > 1) {
    found.sort((a, b) => (a.fullName < b.fullName ? -1 : 1));
    const choices = found.map(({ fullName, fips }) => `${fullName} (${fips})`);
    throw new InvalidInputError(
      'COUNTY_AMBIGUOUS',
      `"${text}" names ${found.length} places: ${listed(choices)}.`,
      {
        hint: 'Write one of them out, or give its five-digit code.',
        details: { field: 'county', choices: found.map(({ fullName }) => fullName) },
      },
    );
  }
  throw unknownCounty(inState, text, given);
}

/** An exact name or code first; without the words that say its kind only if there is none. */
function matches(counties: readonly County[], given: string): County[] {
  const byCode = counties.filter(({ fips }) => fips === given);
  if (byCode.length > 0) return byCode;
  const exact = counties.filter(({ name }) => folded(name) === folded(given));
  if (exact.length > 0) return exact;
  const kind = KIND.exec(given)?.[1].toLowerCase();
  if (kind === undefined) return [];
  const bare = folded(given.replace(KIND, ''));
  const named = counties.filter(({ name }) => folded(name) === bare);
  const apart = named.filter(({ independentCity }) => independentCity === (kind === 'city'));
  return apart.length > 0 ? apart : named;
}

function unknownCounty(counties: readonly County[], text: string, given: string): InvalidInputError {
  const wanted = folded(given.replace(KIND, ''));
  const like = counties
    .map((county) => ({ county, slips: editDistance(wanted, folded(county.name)) }))
    .filter(({ slips }) => slips <= SLIPS)
    .sort((a, b) => a.slips - b.slips)
    .map(({ county }) => county.fullName);
  return new InvalidInputError('COUNTY_UNKNOWN', `No county is called "${text}".`, {
    hint:
      like.length > 0
        ? `Names like it: ${listed(like)}.`
        : 'Write the county with its state, for example "Gallatin, MT", or give latitude and longitude.',
    details: { field: 'county', nearest: like.slice(0, NAMED) },
  });
}

/** The states that may have been meant by letters or a name, as a sentence; empty where none is near. */
function stateMeant(counties: readonly County[], given: string): string {
  const all = (of: (county: County) => string) => [...new Set(counties.map(of))].sort();
  if (given.length !== 2) {
    const meant = meantOf(
      given,
      all(({ stateName }) => stateName),
    );
    return meant === null ? '' : `${meant} `;
  }
  const like = codesLike(
    given.toUpperCase(),
    all(({ state }) => state),
  );
  return like.length === 0 ? '' : `Did you mean ${like.join(' or ')}? `;
}

const isState = ({ state, stateName }: County, given: string): boolean =>
  folded(state) === folded(given) || folded(stateName) === folded(given);

/** A name by its letters alone; "saint" as it is mostly shortened. */
const folded = (name: string): string =>
  name
    .normalize('NFD')
    .toLowerCase()
    .replace(/\bsaint\b/g, 'st')
    .replace(/\bsainte\b/g, 'ste')
    .replace(/[^a-z0-9]/g, '');

const listed = (names: readonly string[]): string =>
  names.length > NAMED
    ? `${names.slice(0, NAMED).join('; ')} and ${names.length - NAMED} more`
    : names.join('; ');

function splitAtLast(text: string, mark: string): string[] {
  const at = text.lastIndexOf(mark);
  return at < 0 ? [text] : [text.slice(0, at).trim(), text.slice(at + 1).trim()];
}
