/**
 * Speed of breakdown in soil relative to field capacity, from 0 in air-dry soil to 1. [–]
 *
 * Equation   f_W = r^B with r = (θ − θ_ad)/(θ_FC − θ_ad), kept in 0 … 1
 * Symbols    relativeWetness = r, place between air-dry and field capacity [–], any number
 *            exponentB = B, sharpness of the response [–], 0 to 3; 0.5 unless the active has its own
 * Valid      an assumption of this project, chosen to fit published facts on drying soil. Runs once per day
 *            of the breakdown sum, so exponentB is not checked
 * Source     this project; on the scale of θ/θ_ref the same power is {@link walkerMoistureResponse}
 * Checked    test/published/moisture-response.json, test/model/moistureResponse.test.ts
 * @example   moistureResponse(0.5, 0.5) // 0.7071
 */
export function moistureResponse(relativeWetness: number, exponentB: number): number {
  if (relativeWetness <= 0) return 0;
  if (relativeWetness >= 1) return 1;
  return relativeWetness ** exponentB;
}
