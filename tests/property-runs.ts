/** How many cases each property runs: 300 with `npm test`, 5000 with `npm run test:long`. */
export const RUNS = process.env['KERFBOOK_LONG'] === '1' ? 5000 : 300

/**
 * The seed of properties that compare the engine with the plain version: one that stands with `npm test`, so that what
 * fails there fails for everybody; a new one at each `npm run test:long`, which goes looking.
 */
export const COMPARED_SEED = process.env['KERFBOOK_LONG'] === '1' ? Date.now() % 2 ** 31 : 20_270_503
