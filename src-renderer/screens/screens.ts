import type { Component } from 'svelte'
import type { Screen } from '../state/route'

/** Each screen is its own piece of the program, loaded when first shown. */
const MODULES = import.meta.glob<{ readonly default: Component<Record<string, unknown>> }>(
  './*/*Screen.svelte',
)

const FILES = {
  sites: 'Sites',
  site: 'Site',
  visit: 'Visit',
  report: 'Report',
  trend: 'Trend',
  spend: 'Spend',
  setup: 'Setup',
  glass: 'Glass',
  kitchen: 'Kitchen',
  portfolio: 'Portfolio',
  products: 'Products',
  instruments: 'Instruments',
  settings: 'Settings',
} as const satisfies Record<Exclude<Screen, 'nowhere'>, string>

const find = (screen: Exclude<Screen, 'nowhere'>) => {
  const path = Object.keys(MODULES).find((name) => name.endsWith(`/${FILES[screen]}Screen.svelte`))
  return path === undefined ? undefined : MODULES[path]
}

/** Whether this build holds the screen at all; links to one that is not here are left out. */
export const hasScreen = (screen: Exclude<Screen, 'nowhere'>): boolean => find(screen) !== undefined

export async function loadScreen(
  screen: Exclude<Screen, 'nowhere'>,
): Promise<Component<Record<string, unknown>> | null> {
  const load = find(screen)
  return load === undefined ? null : (await load()).default
}
