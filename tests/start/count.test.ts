import { describe, expect, it } from 'vitest'
import { closingLine, countTests, total } from '../../lib/start/count.mjs'

const ended = (status: string) => ({ status, fullName: 'a title', failureMessages: [] as string[] })
const report = (success: boolean, ...assertionResults: ReturnType<typeof ended>[]) => ({
  success,
  testResults: [{ name: '/house/tests/a.test.ts', status: success ? 'passed' : 'failed', assertionResults }],
})

describe('counting tests', () => {
  it('counts what passed', () => {
    expect(countTests(report(true, ended('passed'), ended('passed')), '/house')).toEqual({
      passed: 2,
      failed: 0,
      failures: [],
    })
  })

  it('names a failure by its file below the house, its title and its messages', () => {
    const failing = { status: 'failed', fullName: 'adds', failureMessages: ['1 is not 2', 'nor 3'] }
    expect(countTests(report(false, ended('passed'), failing), '/house')).toEqual({
      passed: 1,
      failed: 1,
      failures: [{ file: 'tests/a.test.ts', title: 'adds', message: '1 is not 2\nnor 3' }],
    })
  })

  it.each(['skipped', 'pending', 'todo', 'disabled'])('counts a test that is %s as failed', (status) => {
    const count = countTests(report(true, ended('passed'), ended(status)), '/house')
    expect([count.passed, count.failed]).toEqual([1, 1])
    expect(count.failures[0]?.message).toContain(status)
  })

  it('counts a file that did not load as failed, with the reason', () => {
    const broken = {
      name: '/house/tests/b.test.ts',
      status: 'failed',
      message: 'no such file',
      assertionResults: [],
    }
    expect(countTests({ success: false, testResults: [broken] }, '/house').failures).toEqual([
      { file: 'tests/b.test.ts', title: 'the file as a whole', message: 'no such file' },
    ])
  })

  it('counts a file whose hook failed though each of its tests passed', () => {
    expect(countTests(report(false, ended('passed')), '/house').failed).toBe(1)
  })

  it('counts a file without tests as failed', () => {
    expect(countTests(report(true), '/house').failed).toBe(1)
  })

  it('counts a run without a report, without a test, or with an error outside of tests as failed', () => {
    expect(countTests(undefined, '/house').failed).toBe(1)
    expect(countTests({ success: true, testResults: [] }, '/house').failed).toBe(1)
    expect(countTests({ ...report(true, ended('passed')), success: false }, '/house').failed).toBe(1)
  })
})

describe('the sum', () => {
  it('adds the gates to the tests', () => {
    const gates = [
      { name: 'lint', ok: true },
      { name: 'types', ok: false },
    ]
    expect(total(gates, { passed: 7, failed: 2 })).toEqual({ passed: 8, failed: 3 })
  })

  it('closes a run with one line', () => {
    expect(closingLine({ passed: 8, failed: 0 })).toBe('8 passed, 0 failed')
  })
})
