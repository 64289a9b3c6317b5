import * as z from 'zod/mini';

export type Counts = { readonly passed: number; readonly failed: number };

const vitestReport = z.object({
  numPassedTests: z.number(),
  numFailedTests: z.number(),
  testResults: z.array(z.object({ status: z.string(), assertionResults: z.array(z.unknown()) })),
});

/** A file that could not even be loaded has no tests in the report: it counts as one failure. */
export function fromVitest(report: unknown): Counts {
  const { numPassedTests, numFailedTests, testResults } = vitestReport.parse(report);
  const notLoaded = testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  );
  return { passed: numPassedTests, failed: numFailedTests + notLoaded.length };
}

const playwrightReport = z.object({
  stats: z.object({ expected: z.number(), unexpected: z.number(), flaky: z.number() }),
  errors: z.array(z.unknown()),
});

/** A test that passed only when tried again did not pass. */
export function fromPlaywright(report: unknown): Counts {
  const { stats, errors } = playwrightReport.parse(report);
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + errors.length };
}

/** What a runner of our own said on its last line. */
export function fromLastLine(said: string): Counts {
  const [, passed, failed] =
    /^(\d+) passed, (\d+) failed\s*$/m.exec(said.trimEnd().split('\n').at(-1) ?? '') ?? [];
  if (passed === undefined || failed === undefined)
    throw new Error('the last line does not say what passed and failed');
  return { passed: Number(passed), failed: Number(failed) };
}

export function addUp(counts: readonly Counts[]): Counts {
  return counts.reduce(
    (sum, { passed, failed }) => ({ passed: sum.passed + passed, failed: sum.failed + failed }),
    {
      passed: 0,
      failed: 0,
    },
  );
}
