/**
 * What vitest's JSON reporter writes, as far as it is read here.
 * @typedef {{ status: string, fullName: string, failureMessages?: string[] | null }} TestResult
 * @typedef {{ name: string, status: string, startTime?: number, endTime?: number, message?: string, assertionResults: TestResult[] }} FileResult
 * @typedef {{ success: boolean, testResults: FileResult[] }} Report
 *
 * @typedef {{ file: string, title: string, message: string }} Failure
 * @typedef {{ passed: number, failed: number, failures: Failure[] }} Count
 * @typedef {{ name: string, ok: boolean }} Gate
 */

/**
 * Counts tests. A test that was skipped or is to do has failed, and so has a file without tests or one that did
 * not load, a run without any test, and a run that vitest calls unsuccessful for another reason.
 * @param {Report | undefined} report nothing when vitest wrote no report
 * @param {string} root the folder that file names are shortened by
 * @returns {Count}
 */
export function countTests(report, root) {
  /** @type {Failure[]} */
  const failures = []
  let passed = 0
  for (const file of report?.testResults ?? []) {
    const name = file.name.startsWith(`${root}/`) ? file.name.slice(root.length + 1) : file.name
    for (const test of file.assertionResults) {
      if (test.status === 'passed') passed += 1
      else failures.push({ file: name, title: test.fullName, message: messageOf(test) })
    }
    const itselfFailed =
      file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed')
    if (itselfFailed || file.assertionResults.length === 0) {
      failures.push({ file: name, title: 'the file as a whole', message: file.message || 'it holds no test' })
    }
  }
  if (report === undefined) {
    failures.push({ file: 'vitest', title: 'the run as a whole', message: 'vitest wrote no report' })
  } else if (passed === 0 && failures.length === 0) {
    failures.push({ file: 'vitest', title: 'the run as a whole', message: 'not one test was found' })
  } else if (!report.success && failures.length === 0) {
    failures.push({ file: 'vitest', title: 'the run as a whole', message: 'an error outside of any test' })
  }
  return { passed, failed: failures.length, failures }
}

const LONGEST_SHOWN = 12

/**
 * Where the time goes: the files that took longest, in seconds.
 * @param {Report | undefined} report
 * @param {string} root the folder that file names are shortened by
 */
export function longestFiles(report, root) {
  const files = (report?.testResults ?? []).map(({ name, startTime = 0, endTime = 0 }) => ({
    name: name.slice(root.length + 1),
    seconds: Math.round((endTime - startTime) / 1000),
  }))
  const longest = files.sort((left, right) => right.seconds - left.seconds).slice(0, LONGEST_SHOWN)
  return `longest files: ${longest.map(({ name, seconds }) => `${name} ${seconds} s`).join(', ')}`
}

/** @param {TestResult} test */
function messageOf(test) {
  if (test.status === 'failed') return (test.failureMessages ?? []).join('\n')
  return `it did not run (${test.status}), which counts as failed`
}

/**
 * The sum of tests and gates.
 * @param {readonly Gate[]} gates
 * @param {{ passed: number, failed: number }} tests
 */
export function total(gates, tests) {
  const passedGates = gates.filter((gate) => gate.ok).length
  return {
    passed: tests.passed + passedGates,
    failed: tests.failed + gates.length - passedGates,
  }
}

/**
 * The last line of a run.
 * @param {{ passed: number, failed: number }} sum
 */
export function closingLine(sum) {
  return `${sum.passed} passed, ${sum.failed} failed`
}
