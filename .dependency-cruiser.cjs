/**
 * The floors and rooms of the house as rules. Every rule named here has a planted violation in
 * lib/start/planted-violations.mjs, and a rule without one fails the gate.
 */

/** Core rooms form a line: each imports only from those before it. */
const coreRooms = [
  'kernel',
  'calendar',
  'rulebooks',
  'people',
  'cards',
  'cautions',
  'work',
  'authority',
  'saws',
  'sheets',
  'courses',
  'evaluations',
  'decisions',
  'hitches',
  'incidents',
  'credentials',
  'journal',
  'program',
]

/** What each floor may import of our own code. Floors not named here do not exist. */
const floors = {
  core: ['core'],
  wording: ['wording', 'core'],
  drawings: ['drawings', 'core'],
  access: ['access', 'store', 'platform', 'wording', 'drawings', 'core'],
  store: ['access', 'store', 'platform', 'wording', 'drawings', 'core'],
  platform: ['access', 'store', 'platform', 'wording', 'drawings', 'core'],
  usecases: ['usecases', 'access', 'store', 'platform', 'wording', 'drawings', 'core'],
  // The command line puts everything together: it is where the program starts.
  cli: ['cli', 'usecases', 'access', 'store', 'platform', 'wording', 'drawings', 'core'],
  start: ['start'],
}

const error = (name, comment, from, to) => ({ name, severity: 'error', comment, from, to })

const roomRules = coreRooms.slice(0, -1).map((room, place) => {
  const later = coreRooms.slice(place + 1).join('|')
  return error(
    `core-room-order-${room}`,
    'Core rooms import only from rooms to their left in the line.',
    { path: `^lib/core/${room}/` },
    { path: `^lib/core/(${later})/` },
  )
})

const floorRules = Object.entries(floors).map(([floor, allowed]) =>
  error(
    `floor-${floor}`,
    `lib/${floor} imports of our own code only: ${allowed.join(', ')}.`,
    { path: `^lib/${floor}/` },
    { path: '^(lib|app|tests|seeds|prisma)/', pathNot: `^lib/(${allowed.join('|')})/` },
  ),
)

/** What lies in no known place may neither be imported nor import. */
const unknownRules = (what, path, pathNot) => {
  const comment = `A new ${what} takes its place in .dependency-cruiser.cjs first.`
  return [
    error(`unknown-${what}`, comment, {}, { path, pathNot }),
    error(`unknown-${what}-imports`, comment, { path, pathNot }, {}),
  ]
}

module.exports = {
  forbidden: [
    ...roomRules,
    ...floorRules,
    error(
      'floor-app',
      'A page knows rooms and use cases, never tables, the command line or the start scripts.',
      { path: '^app/' },
      { path: '^(tests|seeds|prisma|lib/(store|cli|start))/' },
    ),
    ...unknownRules('room', '^lib/core/', `^lib/core/(${coreRooms.join('|')})/`),
    ...unknownRules('floor', '^lib/', `^lib/(${Object.keys(floors).join('|')})/`),
    error(
      'core-no-packages',
      'The core uses no package but zod (in *.schema.ts) and temporal-polyfill (in calendar).',
      { path: '^lib/core/' },
      { path: 'node_modules/', pathNot: 'node_modules/(zod|temporal-polyfill)/' },
    ),
    error(
      'zod-in-schemas-only',
      'In the core only *.schema.ts imports zod.',
      { path: '^lib/core/', pathNot: '\\.schema\\.ts$' },
      { path: 'node_modules/zod/' },
    ),
    error(
      'temporal-in-calendar-only',
      'In the core only the calendar imports temporal-polyfill.',
      { path: '^lib/core/', pathNot: '^lib/core/calendar/' },
      { path: 'node_modules/temporal-polyfill/' },
    ),
    error(
      'core-no-built-ins',
      'The core and the wording run anywhere: no Node built-ins.',
      { path: '^lib/(core|wording)/' },
      { dependencyTypes: ['core'] },
    ),
    error(
      'wording-no-packages',
      'The wording imports the core only.',
      { path: '^lib/wording/' },
      { path: 'node_modules/' },
    ),
    error(
      'start-built-ins-only',
      'The start scripts run before anything is installed.',
      { path: '^lib/start/' },
      { path: 'node_modules/' },
    ),
    error(
      'no-test-packages-in-the-product',
      'lib and app do not import development packages.',
      { path: '^(lib|app)/' },
      { dependencyTypes: ['npm-dev'], pathNot: 'node_modules/@types/' },
    ),
    error(
      'plain-version-is-independent',
      'tests/plain is an oracle of its own: of our code it takes types only.',
      { path: '^tests/plain/' },
      {
        path: '^(lib|app|seeds|tests)/',
        pathNot: '^tests/(plain/|property-runs\\.ts$)',
        dependencyTypesNot: ['type-only'],
      },
    ),
    error(
      'client-files-stay-light',
      'What runs in a browser reaches neither store, use cases, access nor platform: it gets its actions as props.',
      { path: '^app/.*(\\.client\\.tsx|/error\\.tsx)$|^app/(error|global-error)\\.tsx$' },
      { path: '^lib/(store|usecases|access|platform)/', reachable: true },
    ),
    error(
      'generated-in-store-only',
      'Only the store knows the generated database client.',
      { path: '^(lib|app|tests|seeds)/', pathNot: '^lib/store/' },
      { path: '^lib/store/generated/' },
    ),
    error(
      'no-circular',
      'Nothing imports itself by a detour.',
      { pathNot: '^lib/store/generated/' },
      { circular: true },
    ),
    error(
      'everything-resolves',
      'Every import leads somewhere. Peers of the bench are installed apart.',
      { pathNot: '^tests/bench/' },
      { couldNotResolve: true },
    ),
  ],
  options: {
    doNotFollow: { path: ['node_modules', '^lib/store/generated/'] },
    exclude: { path: '^tests/bench/node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'node', 'default'],
      mainFields: ['module', 'main', 'types'],
    },
  },
}
