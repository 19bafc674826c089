import type { QuestionInput } from '../api/contract.ts';
import { ChoiceBlank } from './ChoiceBlank.tsx';
import { QUESTION_DEFAULTS } from './defaults.ts';
import { NumberBlank } from './NumberBlank.tsx';
import { type Lead, named } from './sharedBlanks.tsx';
import { useSubject } from './subject.tsx';

const COUNTRIES = [
  { value: 'US', text: 'United States' },
  { value: 'CA', text: 'Canada' },
];
const BY_SAND = 'by sand and clay';
/** Taken when sand and clay are chosen, until others are given: about the middle of a loam. [%] */
const USUAL_SAND = 40;
const USUAL_CLAY = 20;

type Texture = Pick<QuestionInput, 'soilClass' | 'sandPercent' | 'clayPercent'>;

/** The soil: a texture class, or sand and clay. */
export function SoilBlanks({ lead }: Partial<Lead>) {
  const { of, set, at, choices } = useSubject<Texture>();
  const bySand = of.sandPercent !== undefined || of.clayPercent !== undefined;
  return (
    <>
      <ChoiceBlank
        field={at('soilClass')}
        lead={lead}
        value={bySand ? BY_SAND : (of.soilClass ?? 'loam')}
        options={named([...(choices.soilClasses.length > 0 ? choices.soilClasses : ['loam']), BY_SAND])}
        commit={(soil) =>
          set(
            soil === BY_SAND
              ? { soilClass: undefined, sandPercent: USUAL_SAND, clayPercent: USUAL_CLAY }
              : {
                  soilClass: soil as Texture['soilClass'],
                  sandPercent: undefined,
                  clayPercent: undefined,
                },
          )
        }
      />
      {bySand && (
        <>
          <NumberBlank
            field={at('sandPercent')}
            unit="%"
            value={of.sandPercent}
            min={0}
            max={100}
            commit={(sandPercent) => set({ sandPercent })}
          />
          <NumberBlank
            field={at('clayPercent')}
            unit="%"
            value={of.clayPercent}
            min={0}
            max={60}
            commit={(clayPercent) => set({ clayPercent })}
          />
        </>
      )}
    </>
  );
}

export function CountryBlank() {
  const { of, set, at } = useSubject<Pick<QuestionInput, 'country'>>();
  return (
    <ChoiceBlank
      field={at('country')}
      value={of.country ?? QUESTION_DEFAULTS.country}
      options={COUNTRIES}
      commit={(country) => set({ country: country as QuestionInput['country'] })}
    />
  );
}

type Ground = Pick<QuestionInput, 'organicMatterPercent' | 'coverFraction' | 'soilPh'>;

/** What is known of the topsoil beyond its texture. */
export function GroundBlanks() {
  const { of, set, at } = useSubject<Ground>();
  return (
    <>
      <NumberBlank
        field={at('organicMatterPercent')}
        unit="%"
        value={of.organicMatterPercent}
        min={0}
        max={8}
        optional
        commit={(organicMatterPercent) => set({ organicMatterPercent })}
      />
      <NumberBlank
        field={at('coverFraction')}
        unit="%"
        quantity="fraction"
        value={of.coverFraction}
        standard={QUESTION_DEFAULTS.coverFraction}
        min={0}
        max={1}
        commit={(given) => set({ coverFraction: given ?? QUESTION_DEFAULTS.coverFraction })}
      />
      <NumberBlank
        field={at('soilPh')}
        unit="pH"
        value={of.soilPh}
        min={3}
        max={11}
        optional
        commit={(soilPh) => set({ soilPh })}
      />
    </>
  );
}
