import type { Page } from 'playwright-core'

/**
 * What is wrong with how the text of a page lies, as lines: text out of the window or cut by what holds it, and text on
 * other text.
 */
export function layoutFindings(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const SLACK = 1.5
    const said = (text: string) => text.trim().slice(0, 40)
    const lines: { text: string; box: DOMRect; of: Element }[] = []
    const findings = new Set<string>()
    const cutters = new Map<Element, readonly DOMRect[]>()
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const of = node.parentElement
      const text = node.textContent ?? ''
      if (of === null || text.trim() === '' || of.closest('script, style, svg, option, datalist')) continue
      if (!of.checkVisibility({ checkVisibilityCSS: true }) || of.closest('.hidden-by-sight, .skip')) continue
      const range = document.createRange()
      range.selectNodeContents(node)
      const boxes = [...range.getClientRects()].filter(({ width, height }) => width > 1 && height > 1)
      if (boxes.length === 0 || isForEarsAlone(of)) continue
      for (const box of boxes) {
        lines.push({ text, box, of })
        if (box.left < -SLACK || box.right > document.documentElement.clientWidth + SLACK)
          findings.add(`out of the window: ${said(text)}`)
        for (const edge of cuttersOf(of)) {
          if (box.left < edge.left - SLACK || box.right > edge.right + SLACK || box.bottom > edge.bottom + 4)
            findings.add(`cut: ${said(text)}`)
        }
      }
    }
    for (const [at, one] of lines.entries()) {
      for (const other of lines.slice(at + 1)) {
        const wide = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left)
        const high = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top)
        // Letters reach past their line: what counts is that a good part of it lies on another.
        if (wide > 3 && high > 0.45 * Math.min(one.box.height, other.box.height))
          findings.add(`on each other: ${said(one.text)} | ${said(other.text)}`)
      }
    }
    return [...findings]

    /** The edges of whatever round an element cuts what runs over them. */
    function cuttersOf(element: Element): readonly DOMRect[] {
      const known = cutters.get(element)
      if (known !== undefined) return known
      const round = element.parentElement
      const outer = round === null || round === document.body ? [] : cuttersOf(round)
      const { overflowX, overflowY } = getComputedStyle(element)
      const isOpen = overflowX === 'visible' && overflowY === 'visible'
      const found = isOpen ? outer : [...outer, element.getBoundingClientRect()]
      cutters.set(element, found)
      return found
    }

    function isForEarsAlone(element: Element): boolean {
      for (let at: Element | null = element; at !== null; at = at.parentElement)
        if (getComputedStyle(at).clipPath === 'inset(50%)') return true
      return false
    }
  })
}

/**
 * Text from right to left that is not alone in what isolates it: beside it figures and commas of the sentence would
 * change their place.
 */
export function mingledDirections(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const FROM_RIGHT = /[\p{Script=Arabic}\p{Script=Hebrew}]/u
    const FROM_LEFT = /[\p{L}\p{N}]/u
    const findings = new Set<string>()
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      if (!FROM_RIGHT.test(node.textContent ?? '')) continue
      let holder = node.parentElement
      if (holder === null || holder.closest('script, style, svg')) continue
      while (holder.parentElement !== null && !isIsolating(holder)) holder = holder.parentElement
      // What FSI and PDI enclose is set apart too, where no element can be.
      const together = holder.textContent.replace(/\u2068[^\u2069]*\u2069/gu, '')
      if (!FROM_RIGHT.test(together)) continue
      const others = Array.from(together).filter(
        (letter) => FROM_LEFT.test(letter) && !FROM_RIGHT.test(letter),
      )
      if (others.length > 0) findings.add(`${holder.localName}: ${holder.textContent.slice(0, 120)}`)
    }
    return [...findings]

    function isIsolating(element: Element): boolean {
      return element.localName === 'option' || /isolate|plaintext/.test(getComputedStyle(element).unicodeBidi)
    }
  })
}
