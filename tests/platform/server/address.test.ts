import { describe, expect, it } from 'vitest'
import {
  isHttps,
  isKnownHost,
  readAddress,
  type ServerAddress,
} from '../../../lib/platform/server/address.ts'

function address(environment: Record<string, string>): ServerAddress {
  const read = readAddress(environment)
  if (!read.ok) throw new Error(read.problem.join('\n'))
  return read.value
}

describe('where the server listens', () => {
  it('is this machine alone where nothing is said', () => {
    const read = address({})
    expect([read.host, read.port, read.publicUrl.origin]).toEqual([
      '127.0.0.1',
      3000,
      'http://localhost:3000',
    ])
  })

  it('is what HOST, PORT and NEXTAUTH_URL say', () => {
    const read = address({ HOST: '0.0.0.0', PORT: '8080', NEXTAUTH_URL: 'https://saws.example.org' })
    expect([read.host, read.port, read.publicUrl.origin]).toEqual([
      '0.0.0.0',
      8080,
      'https://saws.example.org',
    ])
    expect(isHttps(read)).toBe(true)
  })

  it.each([
    ['PORT', '0'],
    ['PORT', '65536'],
    ['PORT', '3000x'],
    ['PORT', '-1'],
    ['NEXTAUTH_URL', 'saws.example.org'],
    ['NEXTAUTH_URL', 'ftp://saws.example.org'],
  ])('is refused in words where %s is %s', (name, value) => {
    const read = readAddress({ [name]: value })
    expect(read.ok ? [] : read.problem).toEqual([expect.stringContaining(`${name} is "${value}"`)])
  })

  it('tells all that is wrong at once', () => {
    const read = readAddress({ PORT: 'many', NEXTAUTH_URL: 'nowhere' })
    expect(read.ok ? 0 : read.problem.length).toBe(2)
  })
})

describe('the hosts that a request may name', () => {
  it.each([
    [{}, 'localhost:3000', true],
    [{}, 'LOCALHOST:3000', true],
    [{}, '127.0.0.1:3000', true],
    [{}, '[::1]:3000', true],
    [{}, 'localhost:3001', false],
    [{}, 'rebound.example:3000', false],
    [{}, undefined, false],
    [{ HOST: '0.0.0.0' }, 'anything.example', true],
    [{ HOST: '0.0.0.0', NEXTAUTH_URL: 'https://saws.example.org' }, 'saws.example.org', true],
    [{ HOST: '0.0.0.0', NEXTAUTH_URL: 'https://saws.example.org' }, 'localhost:3000', true],
    [{ HOST: '0.0.0.0', NEXTAUTH_URL: 'https://saws.example.org' }, 'other.example.org', false],
  ])('with %j: %s is %s', (environment, host, known) => {
    expect(isKnownHost(address(environment), host)).toBe(known)
  })
})
