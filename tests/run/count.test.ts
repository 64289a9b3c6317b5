import { expect, test } from 'vitest';
import { addUp, fromLastLine, fromPlaywright, fromVitest } from './count.ts';

test('a test file that could not be loaded is a failure, though it holds no failed test', () => {
  const testResults = [
    { status: 'failed', assertionResults: [] },
    { status: 'passed', assertionResults: [{}] },
  ];
  expect(fromVitest({ numPassedTests: 1, numFailedTests: 0, testResults })).toEqual({ passed: 1, failed: 1 });
});

test('a browser test that passed only at the second try did not pass, and a skipped one counts as neither', () => {
  const stats = { expected: 5, unexpected: 1, flaky: 1, skipped: 3 };
  expect(fromPlaywright({ stats, errors: [{}] })).toEqual({ passed: 5, failed: 3 });
});

test('the last line adds up all tools', () => {
  expect(
    addUp([
      { passed: 2, failed: 0 },
      { passed: 3, failed: 4 },
    ]),
  ).toEqual({ passed: 5, failed: 4 });
});

test('a runner that ends without its count has no count', () => {
  expect(fromLastLine('ok   kill\n12 passed, 1 failed\n')).toEqual({ passed: 12, failed: 1 });
  expect(() => fromLastLine('12 passed, 1 failed\nkilled')).toThrow(/last line/);
});
