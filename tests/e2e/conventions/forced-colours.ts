import type { Page } from '@playwright/test'

/** Controls without an edge, choices that do not show their state, and lines of a picture in the colour of the ground. */
export const plainInForcedColours = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const wrong: string[] = []
    const visible = { visibilityProperty: true }
    const seen = (node: Element): boolean =>
      node.checkVisibility(visible) && node.getBoundingClientRect().width > 1

    for (const node of document.querySelectorAll('.button, input.box, select.box, textarea.box')) {
      const style = getComputedStyle(node)
      if (seen(node) && (style.borderTopStyle === 'none' || Number.parseFloat(style.borderTopWidth) < 1))
        wrong.push(`has no edge: ${node.outerHTML.slice(0, 140)}`)
    }

    for (const node of document.querySelectorAll('[type=radio], [type=checkbox]')) {
      const style = getComputedStyle(node)
      if (seen(node) && style.appearance !== 'auto' && style.borderTopStyle === 'none')
        wrong.push(`does not show its state: ${node.outerHTML.slice(0, 140)}`)
    }

    const digits = /[\d.]+/gu
    const parts = (colour: string): readonly number[] => (colour.match(digits) ?? []).map(Number)
    const ground = parts(getComputedStyle(document.body).backgroundColor)
    const swallowed = (colour: string): boolean => {
      const ink = parts(colour)
      return ground.slice(0, 3).every((part, at) => Math.abs(part - (ink[at] ?? 0)) < 40)
    }
    for (const node of document.querySelectorAll('svg path, svg line, svg circle, svg text')) {
      const { stroke, fill } = getComputedStyle(node)
      const inks = (node.matches('text') ? [fill] : [stroke, fill]).filter((ink) => ink.startsWith('rgb'))
      // a mark that is cut out of a filled shape has the colour of the ground, as it should
      const under = node.previousElementSibling
      const cut = under !== null && node.matches('.cut') && !swallowed(getComputedStyle(under).fill)
      if (seen(node) && !cut && inks.length > 0 && inks.every((ink) => swallowed(ink)))
        wrong.push(`cannot be seen: ${node.outerHTML.slice(0, 140)}`)
    }
    return wrong.slice(0, 12)
  })
