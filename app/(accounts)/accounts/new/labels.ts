import { roleLabels } from '../typed-role.ts'

/** The roles that the form has room for; the use case takes more, and more can be given later. */
export const ROLE_PLACES = [0, 1, 2] as const

/** What the fields of a role in a place are called below. */
export function rolePrefix(place: number): string {
  return `roles.${place}.`
}

/** The labels of the form, which its problems begin with. */
export const LABELS: Readonly<Record<string, string>> = {
  signInName: 'Sign-in name',
  person: 'Person on record',
  ...Object.fromEntries(
    ROLE_PLACES.flatMap((place) =>
      Object.entries(roleLabels(rolePrefix(place), place === 0 ? undefined : place + 1)),
    ),
  ),
  because: 'Why',
}
