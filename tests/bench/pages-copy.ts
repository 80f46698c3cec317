import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'

/** What the pages are built and served from. */
const PARTS = [
  'app',
  'lib',
  'prisma',
  'seeds',
  'instrumentation.ts',
  'next.config.mjs',
  'proxy.ts',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'tsconfig.app.json',
]

/** The address of the page that is empty. */
export const EMPTY_PAGE = '/empty-page-of-the-bench'

const EMPTY_ROUTE = `/** Nothing but what stands on every page. */
export default function EmptyPage() {
  return null
}
`

/**
 * Copies the app into a temporary folder with one more page, which is empty: only the same build can say what a page
 * costs that has nothing on it, and the product has no such page.
 */
export function copyWithEmptyPage(repository: string): { folder: string; remove: () => void } {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'kerfbook-pages-'))
  const remove = () => fs.rmSync(folder, { recursive: true, force: true })
  try {
    for (const part of PARTS)
      fs.cpSync(path.join(repository, part), path.join(folder, part), { recursive: true })
    linkOrCopy(path.join(repository, 'node_modules'), path.join(folder, 'node_modules'))
    const route = path.join(folder, 'app', EMPTY_PAGE)
    fs.mkdirSync(route)
    fs.writeFileSync(path.join(route, 'page.tsx'), EMPTY_ROUTE)
    return { folder, remove }
  } catch (error) {
    remove()
    throw error
  }
}

/** The bundler follows no link out of its folder; hard links of each file are as good as files, and cost nothing. */
function linkOrCopy(from: string, to: string): void {
  fs.mkdirSync(to)
  for (const entry of fs.readdirSync(from, { withFileTypes: true })) {
    const [source, target] = [path.join(from, entry.name), path.join(to, entry.name)]
    if (entry.name === '.cache') continue
    if (entry.isDirectory()) linkOrCopy(source, target)
    else if (entry.isSymbolicLink()) fs.symlinkSync(fs.readlinkSync(source), target)
    else linkFile(source, target)
  }
}

function linkFile(source: string, target: string): void {
  try {
    fs.linkSync(source, target)
  } catch (error) {
    // A link cannot lead to another disk.
    if ((error as NodeJS.ErrnoException).code !== 'EXDEV') throw error
    fs.copyFileSync(source, target)
  }
}
