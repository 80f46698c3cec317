import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join, dirname } from 'node:path'
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils'
import * as glue from '@prisma/schema-engine-wasm/schema_engine_bg'
import { adapterFactory } from './adapter.mjs'

/**
 * Loads the engine. The package's own entry imports its .wasm file as a module, which Node does only behind a flag:
 * so the file is read and joined to its glue by hand.
 * @param {{ url: string, datamodels: readonly string[] }} asked
 */
export async function openEngine({ url, datamodels }) {
  const folder = dirname(createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm'))
  // The engine tells of a panic through this global before it traps.
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: { set_message: (/** @type {string} */ message) => (lastPanic = message) },
  })
  const { instance } = await WebAssembly.instantiate(readFileSync(join(folder, 'schema_engine_bg.wasm')), {
    './schema_engine_bg.js': /** @type {WebAssembly.ModuleImports} */ (/** @type {unknown} */ (glue)),
  })
  glue.__wbg_set_wasm(instance.exports)
  const start = /** @type {() => void} */ (instance.exports['__wbindgen_start'])
  start()
  const texts = datamodels.map((file) => /** @type {[string, string]} */ ([file, readFileSync(file, 'utf8')]))
  return glue.SchemaEngine.new(
    { datamodels: texts.length === 0 ? undefined : texts },
    () => undefined,
    bindMigrationAwareSqlAdapterFactory(adapterFactory(url)),
  )
}

/** @type {string | undefined} */
let lastPanic

/** What the engine said when it last trapped, if it did. */
export function panicMessage() {
  return lastPanic
}
