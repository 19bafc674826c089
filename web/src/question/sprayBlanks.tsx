import { INTERCEPTION_CROPS } from '../../../src/schema/codes.ts';
import type { StoredLabel } from '../api/contract.ts';
import { doseUnit } from '../units/units.ts';
import { ChoiceBlank } from './ChoiceBlank.tsx';
import { QUESTION_DEFAULTS } from './defaults.ts';
import { NumberBlank } from './NumberBlank.tsx';
import { AppliedOnBlank, type Lead, named, RateBlank } from './sharedBlanks.tsx';
import { useSubject } from './subject.tsx';
import { TextBlank } from './TextBlank.tsx';
import type { GrowthStage, OtherTreatment } from './treatmentText.ts';

const OWN = 'label:';

/** Figures that were given for one product and fall away with another. */
const OF_THE_FORMER = { interval: undefined, halfLifeDays: undefined, rateGramsPerHa: undefined };

interface ProductBlankProps extends Partial<Lead> {
  /** What else falls away with another product. */
  readonly dropped?: object;
}

/** What was sprayed: an active of the catalogue, or a product of the user's own labels, whose intervals then count. */
export function ProductBlank({ lead, dropped }: ProductBlankProps) {
  const { of, set, at, choices, labels } = useSubject<Pick<OtherTreatment, 'residual' | 'labelEntry'>>();
  const own = labels.find(({ entry }) => entry.id === of.labelEntry);
  return (
    <ChoiceBlank
      field={at('residual')}
      lead={lead}
      label={labels.length === 0 ? 'Residual' : 'Residual, or a product of your labels'}
      value={of.labelEntry === undefined ? of.residual : OWN + of.labelEntry}
      options={[
        ...named(choices.residuals.map(({ name }) => name)),
        ...labels.map(({ entry }) => ({ value: OWN + entry.id, text: `your label: ${entry.name}` })),
        ...(of.labelEntry !== undefined && own === undefined
          ? [{ value: OWN + of.labelEntry, text: `your label: ${of.labelEntry}` }]
          : []),
      ]}
      other="another, written in…"
      remark={own && `${own.entry.actives.map(({ name }) => name).join(' + ')}; its intervals count.`}
      commit={(chosen) => set({ ...OF_THE_FORMER, ...dropped, ...chosenProduct(chosen, labels) })}
    />
  );
}

/** An active of the catalogue, or an own label entry with its first active beside it. */
function chosenProduct(chosen: string, labels: readonly StoredLabel[]) {
  if (!chosen.startsWith(OWN)) return { residual: chosen, labelEntry: undefined };
  const id = chosen.slice(OWN.length);
  const entry = labels.find((label) => label.entry.id === id)?.entry;
  return { residual: entry?.actives[0]?.name, labelEntry: id };
}

export function OverlapBlank() {
  const { of, set, at } = useSubject<Pick<OtherTreatment, 'overlapFactor'>>();
  return (
    <NumberBlank
      field={at('overlapFactor')}
      unit="times the dose"
      value={of.overlapFactor}
      standard={QUESTION_DEFAULTS.overlapFactor}
      min={1}
      max={5}
      commit={(given) => set({ overlapFactor: given ?? QUESTION_DEFAULTS.overlapFactor })}
    />
  );
}

const NO_CROP = 'none';

/** What green leaves catch: a share, or a growing crop by its stage, which stands for one. */
export function LeavesBlanks() {
  const { of, set, at } = useSubject<Pick<OtherTreatment, 'canopyFraction' | 'growthStage'>>();
  const { growthStage: stage } = of;
  return (
    <>
      <ChoiceBlank
        field={at('growthStage')}
        value={stage?.plants ?? NO_CROP}
        options={[{ value: NO_CROP, text: 'no, or by the share below' }, ...named(INTERCEPTION_CROPS)]}
        commit={(plants) =>
          set(
            plants === NO_CROP
              ? { growthStage: undefined }
              : {
                  growthStage: {
                    plants: plants as GrowthStage['plants'],
                    bbch: stage?.bbch ?? 0,
                    establishedTurf: stage?.establishedTurf ?? false,
                  },
                  canopyFraction: QUESTION_DEFAULTS.canopyFraction,
                },
          )
        }
      />
      {stage === undefined ? (
        <NumberBlank
          field={at('canopyFraction')}
          unit="%"
          quantity="fraction"
          value={of.canopyFraction}
          standard={QUESTION_DEFAULTS.canopyFraction}
          min={0}
          max={1}
          remark="Bare ground 0, a nearly closed canopy 80 and more."
          commit={(given) => set({ canopyFraction: given ?? QUESTION_DEFAULTS.canopyFraction })}
        />
      ) : (
        <NumberBlank
          field={at('growthStage.bbch')}
          unit="BBCH"
          value={stage.bbch}
          min={0}
          max={99}
          whole
          remark="The two-digit code on the day of spraying: 0 dry seed, 31 first node, 99 harvested."
          commit={(bbch) => bbch !== undefined && set({ growthStage: { ...stage, bbch } })}
        />
      )}
    </>
  );
}

/** @param top whether it is the rate that a label gives at the most, not the one sprayed */
export function RateGramsBlank({ top = false }: { top?: boolean }) {
  const { of, set, at, units } = useSubject<Pick<OtherTreatment, 'rateGramsPerHa'>>();
  return (
    <NumberBlank
      field={at('rateGramsPerHa')}
      label={
        top ? 'Active at the top label rate' : 'Active ingredient sprayed, for label lines that go by rate'
      }
      unit={doseUnit(units)}
      quantity="rate"
      value={of.rateGramsPerHa}
      min={0}
      max={20_000}
      aboveMin
      optional
      remark={top ? undefined : 'Empty: the longest line counts.'}
      commit={(rateGramsPerHa) => set({ rateGramsPerHa })}
    />
  );
}

export function HalfLifeBlank() {
  const { of, set, at } = useSubject<Pick<OtherTreatment, 'halfLifeDays'>>();
  return (
    <NumberBlank
      field={at('halfLifeDays')}
      unit="days"
      value={of.halfLifeDays}
      min={0.1}
      max={5000}
      optional
      remark="Empty: the catalogue’s."
      commit={(halfLifeDays) => set({ halfLifeDays })}
    />
  );
}

/** The interval that the user's own label gives. */
export function OwnIntervalBlank({ label = 'Rotation interval on your label' }: { label?: string }) {
  const { of, set, at } = useSubject<Pick<OtherTreatment, 'interval'>>();
  return (
    <TextBlank
      field={at('interval')}
      label={label}
      value={of.interval}
      most={60}
      remark="Empty: the catalogue’s, or that of your label entry."
      commit={(interval) => set({ interval: interval === '' ? undefined : interval })}
    />
  );
}

/** Everything that one treatment of several can say, wherever it is entered; its intervals come from outside. */
export function TreatmentBlanks({ dropped }: Pick<ProductBlankProps, 'dropped'>) {
  return (
    <>
      <ProductBlank dropped={dropped} />
      <AppliedOnBlank />
      <RateBlank />
      <OverlapBlank />
      <LeavesBlanks />
      <RateGramsBlank />
      <HalfLifeBlank />
    </>
  );
}
