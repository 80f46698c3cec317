/** The field for the password again, before what cannot be taken back. Its name keeps it from coming back to the page. */
export const OWN_PASSWORD = { name: 'ownPassword', label: 'Your own password' } as const
