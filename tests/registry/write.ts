import { writeFileSync } from 'node:fs'
import { registryPage } from './registry.ts'

writeFileSync('tests/REGISTRY.md', registryPage(process.cwd()))
