import type { BrowserWindow, Rectangle } from 'electron'
import Store from 'electron-store'
import { SMALLEST } from './window-options'

/** Where the window stood, and nothing else, is kept by electron-store. */
export interface WindowPlace {
  readonly last: (screens: readonly Rectangle[]) => Rectangle | null
  readonly follow: (window: Pick<BrowserWindow, 'on' | 'getNormalBounds'>) => void
}

export function windowPlace(cwd: string): WindowPlace {
  const store = new Store<{ readonly place?: Rectangle }>({ name: 'window', cwd, clearInvalidConfig: true })
  return {
    last: (screens) => {
      const place = store.get('place')
      return isPlace(place) && screens.some((screen) => overlaps(place, screen)) ? place : null
    },
    follow: (window) => {
      window.on('close', () => store.set('place', window.getNormalBounds()))
    },
  }
}

const isPlace = (place: unknown): place is Rectangle => {
  if (typeof place !== 'object' || place === null) return false
  const { x, y, width, height } = place as Partial<Rectangle>
  return (
    [x, y, width, height].every(Number.isFinite) &&
    Number(width) >= SMALLEST.width &&
    Number(height) >= SMALLEST.height
  )
}

/** A strip of the title bar must be on a screen, or the window could not be fetched back. */
const overlaps = (place: Rectangle, screen: Rectangle): boolean =>
  place.x + place.width > screen.x + 100 &&
  place.x < screen.x + screen.width - 100 &&
  place.y >= screen.y &&
  place.y < screen.y + screen.height - 40
