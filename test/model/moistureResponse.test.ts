import { describe, expect, it } from 'vitest';
import { moistureResponse } from '../../src/model/breakdown/moistureResponse.ts';
import { walkerMoistureResponse } from '../../src/model/breakdown/walkerMoistureResponse.ts';
import { soilWaterCharacteristics } from '../../src/model/water/soilWaterCharacteristics.ts';
import { classTexture } from '../../src/model/water/textureClass.ts';
import type { TextureClass } from '../../src/schema/soil.ts';

/** How many times longer the half-life is at half of field capacity than at field capacity, exponent 0.5. */
function halfLifeFactor(textureClass: TextureClass): number {
  const { thetaFieldCapacity, thetaWiltingPoint } = soilWaterCharacteristics({
    ...classTexture(textureClass),
    organicMatterPercent: 2,
  });
  const airDry = 0.5 * thetaWiltingPoint;
  return 1 / moistureResponse((thetaFieldCapacity / 2 - airDry) / (thetaFieldCapacity - airDry), 0.5);
}

describe('moistureResponse', () => {
  it('stops in air-dry soil and is full from field capacity up', () => {
    expect([-0.2, 0, 1, 1.4].map((r) => moistureResponse(r, 0.5))).toEqual([0, 0, 1, 1]);
  });

  it('rises with moisture', () => {
    for (let r = 0.01; r < 1; r += 0.01) {
      expect(moistureResponse(r + 0.005, 0.5)).toBeGreaterThan(moistureResponse(r, 0.5));
    }
  });

  it('hardly responds with a small exponent', () => {
    expect(moistureResponse(0.5, 0.1)).toBeGreaterThan(0.93);
  });

  // The design: half the water costs a factor of 1.5 on silt, 1.7 on loam and 2.1 on clay.
  it.each([
    ['silt', 1.5],
    ['loam', 1.7],
    ['clay', 2.1],
  ] as const)('lengthens the half-life on %s at half of field capacity by %d', (textureClass, factor) => {
    expect(Math.abs(halfLifeFactor(textureClass) - factor)).toBeLessThanOrEqual(0.05);
  });
});

describe('walkerMoistureResponse', () => {
  it('does not exceed 1 in wet soil and is 0 without water', () => {
    expect(walkerMoistureResponse(30, 25)).toBe(1);
    expect(walkerMoistureResponse(0, 25)).toBe(0);
  });

  it('refuses a negative content and a reference without water', () => {
    expect(() => walkerMoistureResponse(-1, 25)).toThrow('theta is -1; it must be at least 0');
    expect(() => walkerMoistureResponse(10, 0)).toThrow('thetaReference is 0; it must be above 0');
  });
});
