import { describe, expect, it } from 'vitest';
import { createSumsMemory } from '../../src/analysis/sumsMemory.ts';

describe('memory of sums', () => {
  const memoryOf = (budget: number) => createSumsMemory<Float64Array>(budget, ({ byteLength }) => byteLength);
  const counting = () => {
    let runs = 0;
    return { run: () => new Float64Array(10 + 0 * runs++), runs: () => runs };
  };

  it('runs once for an owner and key', () => {
    const memory = memoryOf(1000);
    const [a, b] = [{}, {}];
    const work = counting();
    memory.get(a, 'x', work.run);
    memory.get(a, 'x', work.run);
    expect(work.runs()).toBe(1);
    memory.get(b, 'x', work.run);
    memory.get(a, 'y', work.run);
    expect(work.runs()).toBe(3);
    expect(memory.bytes()).toBe(240);
  });

  it('drops the longest unused first and stays within its budget', () => {
    const memory = memoryOf(200);
    const owner = {};
    const work = counting();
    memory.get(owner, 'first', work.run);
    memory.get(owner, 'second', work.run);
    memory.get(owner, 'first', work.run);
    memory.get(owner, 'third', work.run);
    expect(memory.bytes()).toBe(160);
    memory.get(owner, 'first', work.run);
    expect(work.runs()).toBe(3);
    memory.get(owner, 'second', work.run);
    expect(work.runs()).toBe(4);
  });

  it('gives a result larger than its budget without keeping it', () => {
    const memory = memoryOf(40);
    expect(memory.get({}, 'x', counting().run).length).toBe(10);
    expect(memory.bytes()).toBe(0);
  });
});
