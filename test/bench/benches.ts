/** Every bench by its name on the command line, loaded when it is called for. */
export const BENCHES: Readonly<Record<string, (flags: string[]) => Promise<void>>> = {
  steps: async (flags) => (await import('./daySteps.ts')).benchDaySteps(flags),
  answer: async (flags) => (await import('./answer.ts')).benchAnswer(flags),
  comparisons: async (flags) => (await import('./comparisons.ts')).benchComparisons(flags),
  many: async (flags) => (await import('./many.ts')).benchMany(flags),
  http: async (flags) => (await import('./http.ts')).benchHttp(flags),
  soak: async (flags) => (await import('./soak.ts')).benchSoak(flags),
  ingest: async (flags) => (await import('./ingest.ts')).benchIngest(flags),
};
