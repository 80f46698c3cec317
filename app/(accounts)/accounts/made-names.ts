/** The names under which an action hands over the link that it made. */
export const MADE = { link: 'madeLink', says: 'madeSays', account: 'madeAccount' } as const
