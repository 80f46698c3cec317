import { deflateRawSync, crc32 } from 'node:zlib'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { readTextTable } from '../../../lib/platform/sheets/read-text.ts'
import { readWorkbook } from '../../../lib/platform/sheets/read-workbook.ts'
import { isZip } from '../../../lib/platform/sheets/zip-mark.ts'
import { MOST_ROWS } from '../../../lib/core/sheets/sheet.ts'
import { readSheetFile } from '../../../lib/usecases/sheets/put-in.ts'

const TABLE = [
  ['Name', 'Number'],
  ['Łukasz, “Ødegård”', '0042'],
  ['two\nlines', ''],
]

describe('text', () => {
  const quoted = (between: string) =>
    TABLE.map((row) => row.map((cell) => `"${cell}"`).join(between)).join('\r\n')
  it.each<[string, Uint8Array]>([
    ['commas in UTF-8', Buffer.from(quoted(','))],
    ['commas in UTF-8 with its mark', Buffer.from(`\ufeff${quoted(',')}`)],
    ['semicolons', Buffer.from(quoted(';'))],
    ['tabs', Buffer.from(quoted('\t'))],
    ['UTF-16 with its mark', Buffer.from(`\ufeff${quoted('\t')}`, 'utf16le')],
  ])('is read with %s', (_, bytes) => {
    expect(readTextTable(bytes)).toEqual({ ok: true, value: TABLE })
  })

  it('is read in Windows-1252 where it is not UTF-8', () => {
    // é, ø and the curly quotes at their places in Windows-1252, as the WHATWG Encoding Standard lists them.
    const bytes = Buffer.from([0x4e, 0x0a, 0x93, 0xe9, 0xf8, 0x94])
    expect(readTextTable(bytes)).toEqual({ ok: true, value: [['N'], ['“éø”']] })
  })

  it.each<[string, Uint8Array, object]>([
    ['a quote that never closes', Buffer.from('a,b\n1,2\n"3,4\n5,6'), { kind: 'quote-not-closed', row: 3 }],
    ['a NUL', Buffer.from('a\n\0'), { kind: 'hidden-character', code: 0 }],
    [
      'a picture named .csv',
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0x00]),
      { kind: 'not-text' },
    ],
  ])('with %s is refused', (_, bytes, problem) => {
    expect(readTextTable(bytes)).toEqual({ ok: false, problem })
  })
})

async function workbook(fill: (book: ExcelJS.Workbook) => void): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook()
  fill(book)
  return new Uint8Array(await book.xlsx.writeBuffer())
}

describe('a workbook', () => {
  it('gives its first sheet, or the one that is chosen, as texts: days, formulas by their results, leading zeros', async () => {
    const bytes = await workbook((book) => {
      book.addWorksheet('People').addRows([
        ['Name', 'Born'],
        ['Łukasz', new Date('1991-05-03T00:00:00Z')],
      ])
      const other = book.addWorksheet('Cards')
      other.addRows([
        ['Number', 'Sum', 'Zeros'],
        ['0042', { formula: '1+1', result: 2 }, 42],
      ])
      other.getCell('C2').numFmt = '0000'
    })
    expect(isZip(bytes)).toBe(true)
    const first = await readWorkbook(bytes, undefined, MOST_ROWS)
    expect(first).toEqual({
      ok: true,
      value: {
        sheet: 'People',
        sheets: ['People', 'Cards'],
        table: [
          ['Name', 'Born'],
          ['Łukasz', '1991-05-03'],
        ],
      },
    })
    const other = await readWorkbook(bytes, 'Cards', MOST_ROWS)
    expect(other).toMatchObject({
      value: {
        table: [
          ['Number', 'Sum', 'Zeros'],
          ['0042', '2', '0042'],
        ],
      },
    })
    expect(await readWorkbook(bytes, 'Saws', MOST_ROWS)).toEqual({
      ...{ ok: false, problem: { kind: 'no-such-sheet', sheet: 'Saws', sheets: ['People', 'Cards'] } },
    })
  })

  it('that inflates a thousandfold is refused before it is unpacked', async () => {
    const huge = Buffer.alloc(300 * 1024 * 1024, 0x20)
    const bytes = zipOf('xl/workbook.xml', huge, huge.length)
    expect(bytes.length).toBeLessThan(400_000)
    const before = process.memoryUsage().rss
    expect(await readSheetFile(bytes, undefined, readWorkbook)).toMatchObject({
      problem: { kind: 'inflates-too-far' },
    })
    expect(process.memoryUsage().rss - before).toBeLessThan(300 * 1024 * 1024)
  })

  it('that says less of its size than it unpacks to is refused', async () => {
    const bytes = zipOf('xl/workbook.xml', Buffer.alloc(50 * 1024 * 1024, 0x20), 1000)
    expect(await readSheetFile(bytes, undefined, readWorkbook)).toMatchObject({
      problem: { kind: 'not-a-workbook' },
    })
  })

  it.each<[string, () => Uint8Array]>([
    ['another zip', () => zipOf('picture.png', Buffer.from('x'), 1)],
    ['cut off', () => zipOf('xl/workbook.xml', Buffer.from('x'), 1).subarray(0, 40)],
    ['with nothing in it that is a workbook', () => zipOf('xl/workbook.xml', Buffer.from('<workbook/>'), 11)],
  ])('%s is refused', async (_, make) => {
    const read = await readSheetFile(make(), undefined, readWorkbook)
    expect(read.ok ? read.value : read.problem).toMatchObject({ kind: 'not-a-workbook' })
  })
})

/** A zip of one part, by the ZIP file format (APPNOTE 6.3): a header, the part, the directory, its end. */
function zipOf(name: string, content: Buffer, saysSize: number): Uint8Array {
  const packed = deflateRawSync(content)
  const about = Buffer.alloc(26)
  about.writeUInt16LE(20, 0)
  about.writeUInt16LE(8, 4)
  about.writeUInt32LE(crc32(content), 10)
  about.writeUInt32LE(packed.length, 14)
  about.writeUInt32LE(saysSize, 18)
  about.writeUInt16LE(name.length, 22)
  const local = Buffer.concat([Buffer.from('PK\x03\x04'), about, Buffer.from(name), packed])
  const directory = Buffer.concat([
    ...[Buffer.from('PK\x01\x02'), Buffer.from([20, 0]), about.subarray(0, 24), Buffer.from([0, 0])],
    ...[Buffer.alloc(14), Buffer.from(name)],
  ])
  const end = Buffer.alloc(22)
  end.write('PK\x05\x06', 'latin1')
  end.writeUInt16LE(1, 8)
  end.writeUInt16LE(1, 10)
  end.writeUInt32LE(directory.length, 12)
  end.writeUInt32LE(local.length, 16)
  return new Uint8Array(Buffer.concat([local, directory, end]))
}
