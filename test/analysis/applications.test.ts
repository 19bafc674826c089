import { expect, it } from 'vitest';
import { type Application, applicationKey } from '../../src/analysis/applications.ts';

const whole: Required<Application> = {
  appliedDay: 18484,
  interval: { months: 9, days: 0 },
  notBefore: 18800,
  load: 1,
  canopyFraction: 0.2,
  halfLife: 60,
  siteFactor: 1.5,
  response: { q10: 2.58, moisture: 'dryness', moistureExponent: 0.5, snowStopsMm: 5 },
  group: '2',
  residual: 'imazethapyr',
};

it('applications that differ in anything have different keys, and equal ones the same', () => {
  const others: Application[] = [
    ...(['appliedDay', 'notBefore', 'load', 'canopyFraction', 'halfLife', 'siteFactor'] as const).map(
      (name) => ({
        ...whole,
        [name]: whole[name] + 0.25,
      }),
    ),
    ...(['months', 'days'] as const).map((name) => ({
      ...whole,
      interval: { ...whole.interval, [name]: whole.interval[name] + 1 },
    })),
    ...(['q10', 'moistureExponent', 'snowStopsMm'] as const).map((name) => ({
      ...whole,
      response: { ...whole.response, [name]: whole.response[name] + 0.25 },
    })),
    { ...whole, response: { ...whole.response, moisture: 'walker' } },
    ...(['group', 'residual'] as const).map((name) => ({ ...whole, [name]: 'another' })),
  ];
  expect(others).toHaveLength(Object.keys({ ...whole, ...whole.interval, ...whole.response }).length - 2);
  const keys = [whole, ...others].map(applicationKey);
  expect(new Set(keys).size).toBe(keys.length);
  expect(applicationKey({ ...whole })).toBe(keys[0]);
});
