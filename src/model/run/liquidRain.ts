/**
 * Rain that falls as rain and not as snow, with {@link groundForcing}'s rule: none on a day whose mean is at or under 0 °C.
 * Worked out where leaves or weeds ask for it only; breakdown needs what reaches the ground. [mm]
 *
 * @param rainMm daily precipitation
 * @param meanTempC mean air temperature of the same days
 */
export const liquidRain = (rainMm: Float64Array, meanTempC: Float64Array): Float64Array =>
  rainMm.map((mm, day) => (meanTempC[day] > 0 ? mm : 0));
