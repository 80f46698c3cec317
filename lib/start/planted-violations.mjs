/**
 * A small house of files, each breaking one rule of .dependency-cruiser.cjs; the layers gate requires that every
 * one is found. `rule` may be nothing where a file must pass.
 * @typedef {{ rule: string, file: string, text: string }} Planted
 */

const target = 'export const target = 1\nexport type Target = number\n'

/** Files that the planted ones import. */
export const targets = {
  'lib/core/kernel/target.ts': target,
  'lib/core/program/target.ts': target,
  'lib/core/attic/target.ts': target,
  'lib/attic/target.ts': target,
  'lib/wording/target.ts': target,
  'lib/cli/target.ts': target,
  'lib/usecases/target.ts': target,
  'lib/store/target.ts': target,
  'lib/start/target.ts': target,
  'lib/store/generated/target.ts': target,
  'tests/builders/target.ts': target,
  'app/planted-between.ts': "export * from '../lib/usecases/target.ts'\n",
  'lib/core/work/planted-circle.ts': "export * from './planted-circle-two.ts'\n",
}

/**
 * @param {string} rule
 * @param {string} file
 * @param {string} from
 * @returns {Planted}
 */
const runtime = (rule, file, from) => ({
  rule,
  file,
  text: `import * as it from '${from}'\nexport const use = it\n`,
})

/**
 * @param {string} rule
 * @param {string} file
 * @param {string} from
 * @returns {Planted}
 */
const typeOnly = (rule, file, from) => ({
  rule,
  file,
  text: `import type { Target } from '${from}'\nexport type Use = Target\n`,
})

const rooms = [
  ...['kernel', 'calendar', 'rulebooks', 'people', 'cards', 'cautions', 'work', 'authority', 'saws'],
  ...['sheets', 'courses', 'evaluations', 'decisions', 'hitches', 'incidents', 'credentials', 'journal'],
]

/** @type {readonly Planted[]} */
export const planted = [
  ...rooms.map((room) =>
    runtime(`core-room-order-${room}`, `lib/core/${room}/planted.ts`, '../program/target.ts'),
  ),
  typeOnly('core-room-order-calendar', 'lib/core/calendar/planted-type.ts', '../program/target.ts'),
  runtime('floor-core', 'lib/core/kernel/planted-floor.ts', '../../wording/target.ts'),
  typeOnly('floor-core', 'lib/core/kernel/planted-floor-type.ts', '../../wording/target.ts'),
  runtime('floor-wording', 'lib/wording/planted.ts', '../cli/target.ts'),
  runtime('floor-drawings', 'lib/drawings/planted.ts', '../wording/target.ts'),
  runtime('floor-access', 'lib/access/planted.ts', '../usecases/target.ts'),
  runtime('floor-store', 'lib/store/planted.ts', '../usecases/target.ts'),
  runtime('floor-platform', 'lib/platform/planted.ts', '../usecases/target.ts'),
  runtime('floor-usecases', 'lib/usecases/planted.ts', '../cli/target.ts'),
  runtime('floor-cli', 'lib/cli/planted.ts', '../start/target.ts'),
  runtime('floor-start', 'lib/start/planted.ts', '../core/kernel/target.ts'),
  runtime('floor-app', 'app/planted.ts', '../lib/store/target.ts'),
  runtime('client-files-stay-light', 'app/planted.client.tsx', './planted-between.ts'),
  runtime('client-files-stay-light', 'app/error.tsx', './planted-between.ts'),
  runtime('unknown-room', 'lib/core/program/planted.ts', '../attic/target.ts'),
  runtime('unknown-floor', 'lib/usecases/planted-floor.ts', '../attic/target.ts'),
  runtime('unknown-room-imports', 'lib/core/attic/planted.ts', '../kernel/target.ts'),
  runtime('unknown-room-imports', 'lib/core/planted.ts', './kernel/target.ts'),
  runtime('unknown-floor-imports', 'lib/attic/planted.ts', '../core/kernel/target.ts'),
  runtime('core-no-packages', 'lib/core/kernel/planted-package.ts', 'date-fns'),
  runtime('zod-in-schemas-only', 'lib/core/kernel/planted-zod.ts', 'zod'),
  runtime('temporal-in-calendar-only', 'lib/core/kernel/planted-temporal.ts', 'temporal-polyfill'),
  runtime('core-no-built-ins', 'lib/core/kernel/planted-fs.ts', 'node:fs'),
  runtime('wording-no-packages', 'lib/wording/planted-package.ts', 'zod'),
  runtime('start-built-ins-only', 'lib/start/planted-package.ts', 'zod'),
  runtime('no-test-packages-in-the-product', 'lib/cli/planted-package.ts', 'fast-check'),
  runtime('plain-version-is-independent', 'tests/plain/planted.ts', '../../lib/core/kernel/target.ts'),
  runtime('plain-version-is-independent', 'tests/plain/planted-builder.ts', '../builders/target.ts'),
  runtime('generated-in-store-only', 'lib/usecases/planted-generated.ts', '../store/generated/target.ts'),
  {
    rule: 'no-circular',
    file: 'lib/core/work/planted-circle-two.ts',
    text: "export * from './planted-circle.ts'\n",
  },
  runtime('everything-resolves', 'lib/core/work/planted-nothing.ts', './not-there.ts'),
]

/** Files that break nothing: the gate also fails when one of them is blamed. */
export const innocent = [
  runtime('', 'lib/core/program/innocent.ts', '../kernel/target.ts'),
  runtime('', 'lib/core/kernel/innocent.schema.ts', 'zod'),
  runtime('', 'lib/core/calendar/innocent.ts', 'temporal-polyfill'),
  runtime('', 'lib/cli/innocent.ts', '../wording/target.ts'),
  runtime('', 'lib/start/innocent.ts', 'node:fs'),
  runtime('', 'lib/store/innocent.ts', './generated/target.ts'),
  runtime('', 'tests/properties/innocent.ts', '../../lib/core/kernel/target.ts'),
  typeOnly('', 'tests/plain/innocent.ts', '../../lib/core/kernel/target.ts'),
]
