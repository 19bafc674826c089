/**
 * What the fields of a question, a kept field and a label entry are called: above the blanks of the page, and in every
 * refusal of page, server and command line. Plain constants; a test holds them to the schemas.
 */

/** Names by key. A key that means something else inside a certain list stands there with it, as `gauge.date`. */
const NAMES: Readonly<Record<string, string>> = {
  // What is asked.
  station: 'Weather record',
  appliedOn: 'Date of spraying',
  residual: 'Residual',
  labelEntry: 'Label entry',
  crop: 'Next crop',
  plantOn: 'Planting date',
  oddsLimit: 'Odds limit',
  rateFraction: 'Rate',
  rateGramsPerHa: 'Active ingredient sprayed, for label lines that go by rate',
  overlapFactor: 'Overlap over the whole field',
  canopyFraction: 'Spray caught by green leaves',
  growthStage: 'Sprayed over a growing crop',
  plants: 'Sprayed over a growing crop',
  bbch: 'Its growth stage',
  establishedTurf: 'Old sward of grass',
  interval: 'Rotation interval on your label',
  halfLifeDays: 'Field half-life, if you know better',
  standUse: 'What becomes of the next crop',
  // The ground.
  soilClass: 'Soil',
  sandPercent: 'Sand',
  clayPercent: 'Clay',
  organicMatterPercent: 'Organic matter, 2 % where nothing is given',
  coverFraction: 'Ground covered by straw or dead weeds',
  soilPh: 'Soil pH in water',
  country: 'Country, for the catalogue’s intervals',
  latitudeDeg: 'Latitude, if the record lacks it',
  elevationM: 'Height of the station, if the record lacks it',
  // Weather and evidence.
  asOf: 'Weather observed up to',
  restOfSeasonRain: 'Rain of the rest of the season',
  baseFrom: 'Past years from',
  baseTo: 'Past years to',
  fillFromNeighbours: 'Gaps in the rain',
  temperatureStation: 'Temperatures, if the station has none',
  outlook: 'Outlook',
  belowPercent: 'Below normal',
  nearPercent: 'Near normal',
  abovePercent: 'Above normal',
  'outlook.from': 'Outlook from',
  'outlook.to': 'Outlook to',
  gauge: 'Your own rain gauge',
  irrigation: 'Irrigation',
  date: 'Day',
  mm: 'Amount',
  rainMm: 'Amount',
  evidence: 'Soil tests and bioassays',
  kind: 'Kind',
  on: 'Day',
  detected: 'The laboratory found',
  fractionLeft: 'Residue found',
  concentrationMgPerKg: 'Residue found',
  detectionLimit: 'Least that it finds',
  depthCm: 'Depth sampled',
  injured: 'Result',
  otherTreatments: 'Other treatments',
  zones: 'Zones',
  'zones.name': 'Name',
  'zones.overlapFactor': 'Overlap there',
  assume: 'Assumptions of the model',
  // Several crops, dates or places at once.
  plantFrom: 'First planting date',
  plantTo: 'Last planting date',
  stepDays: 'Step',
  crops: 'Crops',
  leadDays: 'Days before planting',
  states: 'States',
  box: 'Box',
  west: 'West',
  south: 'South',
  east: 'East',
  north: 'North',
  soilByStation: 'Soil by station',
  // Assumptions.
  labelRainMm: 'Label-basis rain, each fall',
  labelRainEveryDays: 'Label-basis rain, one fall every',
  labelCoverFraction: 'Ground cover on the label’s soil',
  demandFloorFraction: 'Least that a label day asks for',
  halfLifeFactor: 'A half-life day of a field study is worth',
  soilSpread: 'Spread of speed between soils',
  labelMargin: 'Soils that the label covers',
  moistureResponse: 'How drying slows breakdown',
  moistureExponent: 'Strength of that slowing',
  q10: 'Speed-up by warmth',
  meltMmPerDegreeDay: 'Snow melt',
  snowStopsMm: 'Breakdown stands still under snow water of',
  foliageHalfLifeDays: 'Half-life of spray on leaves',
  washOffPerMm: 'Wash-off from leaves by rain',
  testCv: 'Error of a soil residue test',
  bioassaySensitivity: 'Harmful soils that a bioassay finds',
  bioassaySpecificity: 'Harmless soils that stay clean in a bioassay',
  bioassaySpread: 'Spread of a bioassay’s reading',
  controlFractionLeft: 'Dose left when weed control ends',
  activationRainMm: 'Water that puts the residual to work',
  activationDays: 'Within this time of spraying',
  // Kept fields.
  id: 'Id',
  name: 'Name',
  farm: 'Farm',
  areaHa: 'Size',
  place: 'Latitude and longitude',
  'place.latitudeDeg': 'Latitude',
  longitudeDeg: 'Longitude',
  phNote: 'What is known of the pH: history, zones, liming',
  note: 'Remark',
  treatments: 'Treatments',
  'treatments.areaHa': 'Area treated, if not the whole field',
  intervals: 'Intervals by crop',
  plans: 'Planned crops',
  tillage: 'Tillage',
  'tillage.note': 'What was done',
  outcomes: 'Outcomes',
  'outcomes.on': 'Looked at on',
  'outcomes.crop': 'Crop',
  state: 'The stand was',
  injuredPercent: 'Share that was hurt',
  record: 'Record of the application',
  productName: 'Product name as on the label',
  registrationNumber: 'Federal registration number as on the label',
  totalAmount: 'Total amount of product applied',
  location: 'Location',
  site: 'Crop, commodity, stored product or site',
  applicator: 'Certified applicator',
  certificateNumber: 'Certification number',
  time: 'Time of application',
  customerName: 'Customer, where applied for hire',
  customerAddress: 'Address of the customer',
  // Label entries.
  labelVersion: 'Version or date printed on the label',
  enteredOn: 'Read off the label on',
  actives: 'Active ingredients',
  'actives.name': 'Active ingredient',
  'intervals.crop': 'Rotation crop',
  'intervals.interval': 'Rotation interval',
  foodFeedInterval: 'Wait until it may be harvested or grazed',
  conditions: 'Conditions in the label’s words',
  clauses: 'Conditions that can be judged',
  minMm: 'At least',
  months: 'Months',
  days: 'Days',
  grants: 'What it grants',
  counts: 'What counts',
  by: 'Fallen by',
  window: 'Over which time',
  'window.from': 'First day that counts',
  'window.to': 'Last day that counts',
  onDrySoilOnly: 'It holds',
  groups: 'It holds on',
  atLeast: 'pH at least',
  below: 'pH below',
  minPercent: 'Organic matter at least',
  words: 'Where, or under which practice, the interval holds',
  fromGramsPerHa: 'Rate from',
  toGramsPerHa: 'Rate to',
  role: 'The bioassay',
  ifNot: 'If it is not met',
};

/** What one of a list is called, before its number. */
const ENTRIES: Readonly<Record<string, string>> = {
  gauge: 'Your own rain gauge, line',
  irrigation: 'Irrigation, line',
  evidence: 'Finding',
  otherTreatments: 'Other treatment',
  zones: 'Zone',
  treatments: 'Treatment',
  plans: 'Planned crop',
  tillage: 'Tillage',
  outcomes: 'Outcome',
  actives: 'Active',
  intervals: 'Line of the label',
  clauses: 'Condition',
  crops: 'Crop',
  leadDays: 'Lead',
  states: 'State',
  fields: 'Field',
  labels: 'Label entry',
  lastAnswers: 'Last answer',
};

/** Units of amounts that their name does not say, as server and command line take them. */
const UNITS: Readonly<Record<string, string>> = {
  rainMm: 'mm',
  mm: 'mm',
  labelRainMm: 'mm',
  snowStopsMm: 'mm',
  activationRainMm: 'mm',
  elevationM: 'm',
  rateGramsPerHa: 'g/ha',
  minMm: 'mm',
  fromGramsPerHa: 'g/ha',
  toGramsPerHa: 'g/ha',
  halfLifeDays: 'days',
  depthCm: 'cm',
  areaHa: 'ha',
  stepDays: 'days',
};

const isNumber = (part: string): boolean => /^\d+$/.test(part);
const lowered = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

function ownName(parts: readonly string[]): string {
  const key = parts[parts.length - 1];
  const list = parts.slice(0, -1).findLast((part) => !isNumber(part));
  return NAMES[`${list}.${key}`] ?? NAMES[key] ?? `“${key}”`;
}

/**
 * The name above a blank. @param path keys and numbers with dots between them, as refusals have them
 * @example blankName('otherTreatments.0.appliedOn') // 'Date of spraying'
 */
export const blankName = (path: string): string => ownName(path.split('.'));

/**
 * The name by which a refusal calls a field, with the entry of its list.
 * @example fieldName('gauge.0.date') // 'Your own rain gauge, line 1, day'
 */
export function fieldName(path: string): string {
  const parts = path.split('.');
  const entries = parts.flatMap((part, at) =>
    isNumber(part) && at > 0
      ? `${ENTRIES[parts[at - 1]] ?? ownName(parts.slice(0, at))} ${Number(part) + 1}`
      : [],
  );
  const own = isNumber(parts[parts.length - 1]) ? [] : [ownName(parts)];
  return [...entries, ...own].map((name, at) => (at === 0 ? name : lowered(name))).join(', ');
}

/** The unit of an amount, with a space before it; empty where its name says it or it has none. */
export function fieldUnit(path: string): string {
  const unit = UNITS[path.split('.').at(-1) ?? ''];
  return unit === undefined ? '' : ` ${unit}`;
}
