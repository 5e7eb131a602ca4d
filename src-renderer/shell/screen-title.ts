import type { Screen } from '../state/route'

const TITLES: Readonly<Record<Screen, string>> = {
  sites: 'Sites',
  site: 'Overview',
  visit: 'Visit',
  report: 'Service report',
  trend: 'Trend',
  spend: 'Spend',
  setup: 'Set-up',
  glass: 'Glass check',
  kitchen: 'Why do the glasses spot?',
  portfolio: 'Portfolio',
  products: 'Products',
  instruments: 'Instruments',
  settings: 'Settings',
  nowhere: 'Not found',
}

/** What a screen is called everywhere: in links, in the window title, in help. */
export const screenTitle = (screen: Screen): string => TITLES[screen]
