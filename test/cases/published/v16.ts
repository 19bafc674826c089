import { unrunCase } from './publishedCase.ts';

export const v16 = unrunCase({
  id: 'V16',
  source: {
    title:
      "Herbicide carryover risk map note, canola growers' council bulletin; opinion piece on imidazolinone carryover in Saskatchewan",
    publisher: 'farm press and grower bulletin, Saskatchewan',
    year: 2018,
  },
  measured:
    'imazamox and imazethapyr used in dry 2017, Saskatchewan: canola and cereals hurt in many fields in 2018',
  why: 'reports without a field, dose or soil, and the Saskatchewan record at hand ends in 2016',
});
