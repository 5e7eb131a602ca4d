import type { Page } from '@playwright/test'

/**
 * Controls smaller than they may be. Of this house: buttons and boxes are 44 px high, for wet hands and gloves; the
 * least anything may be is 24 by 24 CSS px (WCAG 2.2, 2.5.8). A round or square mark counts with the label it is in;
 * a link inside a sentence is text.
 */
export const smallControls = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, input, select, textarea, summary, nav a, a.button')]
      .filter((node) => node.checkVisibility({ visibilityProperty: true }))
      .map((node) => ({
        node,
        whole: node.matches('[type=radio], [type=checkbox]') ? (node.closest('label') ?? node) : node,
      }))
      .map(({ node, whole }) => ({ node, box: whole.getBoundingClientRect() }))
      .filter(({ node, box }) => {
        // pictures of a file chooser and of the skip link are for programs that read aloud
        if (box.width <= 1 && box.height <= 1) return false
        const main = node.matches('input, select, textarea, .button, button.primary, nav a')
        return box.width < 23.5 || box.height < (main ? 43.5 : 23.5)
      })
      .map(
        ({ node, box }) =>
          `${Math.round(box.width)} by ${Math.round(box.height)} px is too small: ${node.outerHTML.slice(0, 140)}`,
      ),
  )

/** What every field and every page owes whoever cannot see it: names, units, a title, help where it always is. */
export const unnamed = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const wrong: string[] = []
    const visible = { visibilityProperty: true }
    for (const node of document.querySelectorAll('[placeholder], input[type=number]'))
      wrong.push(`a placeholder, or a number that scrolls: ${node.outerHTML.slice(0, 140)}`)
    const fields = document.querySelectorAll<HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>(
      'input:not([type=file], [type=hidden]), select, textarea',
    )
    for (const field of fields) {
      if (!field.checkVisibility(visible)) continue
      const labels = [...(field.labels ?? [])].map((label) => label.textContent).join(' ')
      const name = `${labels} ${field.getAttribute('aria-label') ?? ''}`.trim()
      if (name === '') wrong.push(`a field without a label: ${field.outerHTML.slice(0, 140)}`)
      const beside = field.matches('select')
        ? null
        : (field.parentElement?.querySelector('.unit-name') ?? null)
      const chosen = field.matches('select')
        ? null
        : (field.parentElement?.querySelector<HTMLSelectElement>('select.of-unit') ?? null)
      const unit = (beside?.textContent ?? chosen?.selectedOptions[0]?.textContent ?? '').trim()
      if (unit !== '' && !name.includes(unit)) wrong.push(`“${name}” does not say its unit, ${unit}`)
    }
    return wrong
  })

/** Animations that still run although the person asked for less motion. */
export const moving = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    document
      .getAnimations()
      .filter((one) => one.playState === 'running')
      .filter((one) => Number(one.effect?.getComputedTiming().duration ?? 0) > 1)
      .map((one) => {
        const target = one.effect instanceof KeyframeEffect ? one.effect.target : null
        return `moves: ${target?.outerHTML.slice(0, 140) ?? 'something'}`
      }),
  )

/** How far the page can be scrolled sideways, beyond a pixel of rounding, and which controls stand outside the window. */
export const sideways = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const wide = document.documentElement.clientWidth
    const over = document.documentElement.scrollWidth - wide
    const scrolling = ['auto', 'scroll']
    const scrolls = (node: Element | null): boolean => {
      for (let box = node; box !== null && box !== document.body; box = box.parentElement)
        if (scrolling.includes(getComputedStyle(box).overflowX) && box.scrollWidth > box.clientWidth)
          return true
      return false
    }
    const out = [...document.querySelectorAll<HTMLElement>('button, input, select, a, h1, h2, p, dialog')]
      .filter((node) => node.checkVisibility({ visibilityProperty: true }))
      .filter((node) => {
        const box = node.getBoundingClientRect()
        return box.width > 1 && (box.right > wide + 1 || box.left < -1)
      })
      .filter((node) => !scrolls(node))
      .map((node) => `outside the window: ${node.outerHTML.slice(0, 140)}`)
    return [...(over > 1 ? [`scrolls sideways by ${over} px`] : []), ...out.slice(0, 5)]
  })

/** Text that its own box cuts off. */
export const cutTexts = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('body *')]
      .filter((node) => node.checkVisibility({ visibilityProperty: true }))
      .filter((node) => node.clientWidth > 1 && node.clientHeight > 1 && node.textContent.trim() !== '')
      .filter((node) => !node.matches('select, option, input, textarea, script, svg *'))
      .filter((node) => {
        const style = getComputedStyle(node)
        const cuts = ['hidden', 'clip']
        return (
          (cuts.includes(style.overflowX) && node.scrollWidth > node.clientWidth + 1) ||
          (cuts.includes(style.overflowY) && node.scrollHeight > node.clientHeight + 1)
        )
      })
      .map((node) => `cut off: ${node.outerHTML.slice(0, 140)}`),
  )

/** WCAG 2.1, 1.4.12: what a reader may set, without loss. The content policy refuses a style element; a sheet is none. */
export const spaceTexts = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    const sheet = new CSSStyleSheet()
    sheet.replaceSync(
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }' +
        'p { margin-bottom: 2em !important }',
    )
    document.adoptedStyleSheets = [sheet]
  })
}

/** Before each Tab, looks whether where the keyboard stands shows, and whether something lies over it. */
export const watchFocus = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    const wrong = new Set<string>()
    Object.assign(globalThis, { focusWrong: wrong })
    const parts = [0.1, 0.5, 0.9]
    const look = (here: Element): string | null => {
      const shown = here.matches('[type=radio], [type=checkbox]') ? (here.closest('label') ?? here) : here
      const lined = [here, shown].some((node) => {
        const style = getComputedStyle(node)
        return style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2
      })
      if (!lined) return `does not show the keyboard: ${here.outerHTML.slice(0, 140)}`
      const box = shown.getBoundingClientRect()
      const free = parts.some((x) =>
        parts.some((y) => {
          const top = document.elementFromPoint(box.left + box.width * x, box.top + box.height * y)
          return top !== null && (shown.contains(top) || top.contains(shown))
        }),
      )
      return free ? null : `is covered or out of sight: ${here.outerHTML.slice(0, 140)}`
    }
    document.addEventListener(
      'keydown',
      (event) => {
        const here = document.activeElement
        if (event.key !== 'Tab' || here === null || here.matches('body, [tabindex="-1"]')) return
        const fault = look(here)
        if (fault !== null) wrong.add(fault)
      },
      true,
    )
  })
}

/** Tabs through a screen from its top to its end, or once round a dialog. */
export async function focusFaults(page: Page): Promise<readonly string[]> {
  const stops = await page.evaluate(() => {
    ;(globalThis as unknown as { focusWrong: Set<string> }).focusWrong.clear()
    const top: ParentNode = document.querySelector('dialog[open]') ?? document
    return [...top.querySelectorAll('a[href], button, input, select, textarea, summary')].filter((node) =>
      node.checkVisibility({ visibilityProperty: true }),
    ).length
  })
  for (let step = 0; step < stops; step += 1) await page.keyboard.press('Tab')
  return page.evaluate(() => [...(globalThis as unknown as { focusWrong: Set<string> }).focusWrong])
}

/** Notices whose words have slipped under their sign instead of standing beside it. */
export const signsApart = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.notice > svg:first-child')]
      .filter((sign) => sign.checkVisibility() && sign.nextElementSibling !== null)
      .filter((sign) => {
        const [a, b] = [sign, sign.nextElementSibling ?? sign].map((one) => one.getBoundingClientRect())
        return a !== undefined && b !== undefined && b.left < a.right
      })
      .map((sign) => `words under their sign: ${sign.parentElement?.textContent.trim().slice(0, 60) ?? ''}`),
  )
