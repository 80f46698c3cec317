'use client'

import { useState } from 'react'

const SAID = {
  waiting: '',
  copied: 'Copied. Paste it into a spreadsheet.',
  failed: 'It could not be copied. Open “text to paste” instead.',
}

/** Copies a table, so that a spreadsheet takes every cell as text: leading zeros stay. Without scripts it is not there. */
export function CopyTable({ address }: { address: string }) {
  const [said, say] = useState<keyof typeof SAID>('waiting')
  const copy = async () => {
    try {
      const text = fetch(address).then((answer) => (answer.ok ? answer.text() : Promise.reject(new Error())))
      // Handed over as promises: a browser allows it only in the turn of the press itself.
      await navigator.clipboard.write([
        new ClipboardItem({
          'text/plain': text.then((table) => new Blob([table], { type: 'text/plain' })),
          'text/html': text.then((table) => new Blob([htmlOf(table)], { type: 'text/html' })),
        }),
      ])
      say('copied')
    } catch {
      say('failed')
    }
  }
  return (
    <>
      <button type="button" className="button quiet" onClick={() => void copy()}>
        Copy
      </button>
      <span role="status">{SAID[said]}</span>
    </>
  )
}

/**
 * Spreadsheets take a cell with one of these marks as text, and count with nothing in it: `x:str` and `sdnum`, from
 * memory. A style would say the same, and the policy of the page forbids it.
 */
function htmlOf(table: string): string {
  const rows = table
    .trimEnd()
    .split('\n')
    .map((row) => `<tr>${row.split('\t').map(cellOf).join('')}</tr>`)
  return `<table xmlns:x="urn:schemas-microsoft-com:office:excel">${rows.join('')}</table>`
}

function cellOf(text: string): string {
  const safe = text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
  return `<td x:str="" sdnum="1033;0;@">${safe}</td>`
}
