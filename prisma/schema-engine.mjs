#!/usr/bin/env node
// Stands in for Prisma's native schema engine, which cannot be downloaded everywhere: every Prisma command wants one,
// `generate` included. It speaks the same JSON-RPC over standard input and output and serves it from the WebAssembly
// build of the engine, over @prisma/adapter-pg. prisma.config.ts names it by PRISMA_SCHEMA_ENGINE_BINARY.
// PostgreSQL only: Kerfbook knows no other database.
import { readArguments } from './engine/arguments.mjs'
import { runDatabaseCommand } from './engine/database-command.mjs'
import { serve } from './engine/rpc.mjs'

const asked = readArguments(process.argv.slice(2))
switch (asked.kind) {
  case 'version':
    console.log('schema-engine-cli served by Kerfbook from @prisma/schema-engine-wasm')
    break
  case 'database-command':
    process.exitCode = await runDatabaseCommand(asked.command, asked.url)
    break
  case 'serve':
    await serve(asked)
    break
}
