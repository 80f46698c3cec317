/** How many cases each property runs: 300 with `npm test`, 5000 with `npm run test:long`. */
export const RUNS = process.env['KERFBOOK_LONG'] === '1' ? 5000 : 300
