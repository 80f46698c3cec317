import { describe, expect, it } from 'vitest'
import { comesFromHere, isFromHere } from '../../../lib/platform/server/same-origin.ts'

const HERE = 'saws.example.org'

describe('whether a request comes from here', () => {
  it.each([
    ['a post of our own page', 'POST', `https://${HERE}`, 'same-origin', true],
    ['an address typed by hand', 'POST', undefined, 'none', true],
    ['a program without headers of a browser', 'POST', undefined, undefined, true],
    ['a browser that says only where from', 'POST', `https://${HERE}`, undefined, true],
    ['another site', 'POST', 'https://elsewhere.example', 'cross-site', false],
    [
      'another site, by a browser that says only where from',
      'POST',
      'https://elsewhere.example',
      undefined,
      false,
    ],
    ['a neighbour under the same name', 'POST', `https://blog.${HERE}`, 'same-site', false],
    ['a neighbour that claims our origin', 'POST', `https://${HERE}`, 'same-site', false],
    ['the same host at another port', 'POST', `https://${HERE}:8443`, undefined, false],
    ['a page with no origin', 'POST', 'null', undefined, false],
    ['a deletion from elsewhere', 'DELETE', 'https://elsewhere.example', 'cross-site', false],
    ['a look from elsewhere, which changes nothing', 'GET', 'https://elsewhere.example', 'cross-site', true],
  ])('%s', (_name, method, origin, fetchSite, here) => {
    expect(comesFromHere({ method, host: HERE, origin, fetchSite })).toBe(here)
  })

  it('is read off the request of a route handler', () => {
    const request = (origin: string) =>
      new Request(`https://${HERE}/api/auth/signout`, { method: 'POST', headers: { host: HERE, origin } })
    expect(isFromHere(request(`https://${HERE}`))).toBe(true)
    expect(isFromHere(request('https://elsewhere.example'))).toBe(false)
  })
})
