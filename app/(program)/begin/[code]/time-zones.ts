/** The time zones that this machine knows, by name; UTC is not among those it lists, and is one. */
export function timeZones(): readonly string[] {
  return [...Intl.supportedValuesOf('timeZone'), 'UTC']
}
