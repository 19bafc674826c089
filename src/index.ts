/**
 * Drywake as a library: the question with its answer, and the pure model underneath.
 * Dates are `YYYY-MM-DD` or day numbers since 1970-01-01; units are metric and stand in the names.
 */

// The season: years to odds, dates and thirds
export type { Application } from './analysis/applications.ts';
export { breakdownRecord } from './analysis/breakdownRecord.ts';
export { type SeasonOdds, seasonOdds } from './analysis/seasonOdds.ts';
export type { SeasonQuestion } from './analysis/seasonQuestion.ts';
export { type StationClimate, stationClimate } from './analysis/stationClimate.ts';
export { alternatives } from './app/alternatives.ts';
// The question and its answer
export { type AnswerDeps, type AnswerOptions, answerField } from './app/answerField.ts';
export { batch } from './app/batch.ts';
export { bioassayGuide } from './app/bioassayGuide.ts';
export { type ClimateCache, createClimateCache } from './app/climateCache.ts';
export { compareResiduals } from './app/compareResiduals.ts';
export { cropByDate } from './app/cropByDate.ts';
export { fieldListTemplate, readFieldList } from './app/fieldList.ts';
export { hindcast } from './app/hindcast.ts';
export { oddsLimitOf } from './app/oddsLimitHelper.ts';
export { oneFile } from './app/oneFile/oneFile.ts';
export { regionRows } from './app/region.ts';
export { sheet } from './app/sheet.ts';
export { sheetMarkdown } from './app/sheetMarkdown.ts';
export type { StationWeather } from './app/stationWeather.ts';
export type { WeatherReader } from './app/weatherReader.ts';
export { civilDateOf, dayNumberOf, isoDateOf, parseIsoDate } from './calendar.ts';
export { chooseInterval } from './catalogue/chooseInterval.ts';
export { findActive } from './catalogue/findActive.ts';
export { findCrop } from './catalogue/findCrop.ts';
export { sayInterval } from './catalogue/intervalLength.ts';
export { loadCatalogue } from './catalogue/loadCatalogue.ts';
export { readDataFolder } from './catalogue/readDataFolder.ts';
// Charts: rows to Vega-Lite specifications
export { oddsSeason } from './chart/oddsSeason.ts';
export { quantileDots } from './chart/quantileDots.ts';
export { reliability } from './chart/reliability.ts';
export { DARK_TOKENS, LIGHT_TOKENS, PAGE_TOKENS } from './chart/theme.ts';
export { yearScatter } from './chart/yearScatter.ts';
export { demoQuestion } from './demo/demoQuestion.ts';
export { createDemoReader } from './demo/demoReader.ts';
// Errors and units
export * from './errors.ts';
// The model, one equation each
export { arrheniusResponse } from './model/breakdown/arrheniusResponse.ts';
export { effectiveHalfLife } from './model/breakdown/effectiveHalfLife.ts';
export { fractionLeft } from './model/breakdown/fractionLeft.ts';
export { moistureResponse } from './model/breakdown/moistureResponse.ts';
export { phFactor } from './model/breakdown/phFactor.ts';
export { temperatureResponse } from './model/breakdown/temperatureResponse.ts';
export { walkerMoistureResponse } from './model/breakdown/walkerMoistureResponse.ts';
export { dayOfYear } from './model/calendar/dayOfYear.ts';
export { type Interval, labelDateOf } from './model/calendar/interval.ts';
export { canopyInterceptionFromLai } from './model/deposit/canopyInterception.ts';
export { foliageFractionLeft } from './model/deposit/foliageDecay.ts';
export { interceptionByStage } from './model/deposit/interceptionByStage.ts';
export { leafWashOff } from './model/deposit/leafWashOff.ts';
export { soilConcentration } from './model/deposit/soilConcentration.ts';
export { washOffFraction } from './model/deposit/washOff.ts';
export { gammaFromMoments, gammaFromWetDayMean } from './model/generator/gammaFromMoments.ts';
export { longRunWetShare, meanSpells, wetDayTransitions } from './model/generator/wetDayTransitions.ts';
export { carryoverProbability } from './model/odds/carryoverProbability.ts';
export { demandBreakdownDays } from './model/odds/demand.ts';
export { jeffreysInterval } from './model/odds/jeffreysInterval.ts';
export { logLabelMargin } from './model/odds/labelMargin.ts';
export { oddsRange } from './model/odds/oddsRange.ts';
export { median, quantile } from './model/odds/quantile.ts';
export { wilsonInterval } from './model/odds/wilsonInterval.ts';
export { clearSkyRadiation } from './model/radiation/clearSkyRadiation.ts';
export { daylightHours } from './model/radiation/daylightHours.ts';
export { extraterrestrialRadiation } from './model/radiation/extraterrestrialRadiation.ts';
export { inverseRelativeDistance } from './model/radiation/inverseRelativeDistance.ts';
export { solarDeclination } from './model/radiation/solarDeclination.ts';
export { sunsetHourAngle } from './model/radiation/sunsetHourAngle.ts';
export { type BreakdownResponse, breakdownSums } from './model/run/breakdownSums.ts';
export { dailyForcing } from './model/run/dailyForcing.ts';
export { wetnessRun } from './model/run/wetnessRun.ts';
export { brierParts } from './model/score/brierParts.ts';
export { brierScore, brierSkill } from './model/score/brierScore.ts';
export { evaporationCoefficient } from './model/water/evaporationCoefficient.ts';
export { evaporationReduction } from './model/water/evaporationReduction.ts';
export { hargreavesEt0 } from './model/water/hargreavesEt0.ts';
export { soilWaterCharacteristics } from './model/water/soilWaterCharacteristics.ts';
export { textureClassOf } from './model/water/textureClass.ts';
export { type TopsoilLayer, topsoilLayer } from './model/water/topsoilLayer.ts';
export { totalEvaporableWater } from './model/water/totalEvaporableWater.ts';
export { climateQuantile, plottingPosition } from './model/weather/climateQuantile.ts';
export { monthlyMeanStands, monthlyTotalStands, normalStands } from './model/weather/completeness.ts';
export { normalRatioAmount } from './model/weather/normalRatio.ts';
export { prepareSeries } from './model/weather/prepareSeries.ts';
export { effectiveYears } from './model/years/effectiveYears.ts';
export { outlookWeights } from './model/years/outlookWeights.ts';
export { weightedMean } from './model/years/weightedMean.ts';
export { type Answer, answerSchema, type Season } from './schema/answer.ts';
export { type Assumptions, assumptionsSchema } from './schema/assumptions.ts';
export { INTERCEPTION_CROPS, RAIN_FILLED, RAIN_OBSERVED } from './schema/codes.ts';
export type { Comparison, ComparisonInput, CropGrid, CropGridInput } from './schema/comparison.ts';
export type { Hindcast, HindcastInput } from './schema/hindcast.ts';
export { type Question, type QuestionInput, questionSchema } from './schema/question.ts';
export type { TextureClass } from './schema/soil.ts';
export type { DailySeries, Station, StationExtent, StationRecord } from './schema/weather.ts';
export { createFileReader } from './source/fileReader.ts';
export * from './units.ts';
