/** What the operating system says when it does not do what a command wants of a file, in words. */
const READING: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'is not there.'],
  ['ENOTDIR', 'is not there: a part of the path is a file.'],
  ['EISDIR', 'is a directory. A file is wanted.'],
  ['EACCES', 'may not be read with your permissions.'],
  ['EPERM', 'may not be read with your permissions.'],
  ['ENAMETOOLONG', 'is a longer name than this system has.'],
  ['ELOOP', 'is a link that leads in a circle.'],
  ['EIO', 'could not be read: the device or disk gives an error.'],
  ['ENXIO', 'is no file that can be read.'],
  ['EMFILE', 'could not be read: too many files are open.'],
  ['ENFILE', 'could not be read: too many files are open.'],
])

const WRITING: ReadonlyMap<string, string> = new Map([
  ['EEXIST', 'something is there already, and nothing is written over it.'],
  ['ENOENT', 'there is no such folder.'],
  ['ENOTDIR', 'a part of the path is a file.'],
  ['ENAMETOOLONG', 'that is a longer name than this system has.'],
  ['ENOSPC', 'no room is left on the disk.'],
  ['EDQUOT', 'your share of the disk is used up.'],
  ['EFBIG', 'it is larger than a file may be here.'],
  ['EACCES', 'it may not be written with your permissions.'],
  ['EPERM', 'it may not be written with your permissions.'],
  ['EROFS', 'the disk may only be read.'],
  ['EISDIR', 'a directory stands in its place.'],
  ['EBADF', 'the output stream is closed.'],
  ['EIO', 'the device or disk gives an error.'],
])

/** Why something could not be read (said after its path) or written, by the code of the system's error. */
export function systemWords(doing: 'read' | 'write', error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown'
  return doing === 'read'
    ? (READING.get(code) ?? `could not be read (${code}).`)
    : (WRITING.get(code) ?? `the system says ${code}.`)
}
