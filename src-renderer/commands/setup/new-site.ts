import type { Id, Settings, Site } from '#core/records/index'

/** A site with nothing on it, counting and writing as the installation does. Open six days a week until said otherwise. */
export const newSite = (input: {
  readonly id: Id
  readonly name: string
  readonly timeZone: string
  readonly settings: Pick<Settings, 'currency' | 'units'>
}): Site => ({
  id: input.id,
  name: input.name,
  currency: input.settings.currency,
  units: input.settings.units,
  timeZone: input.timeZone,
  notes: '',
  visitEveryDays: '30',
  calendar: { daysPerWeek: '6', closures: [], seasons: [], growthPercentPerYear: null },
  water: {
    hardness: null,
    solids: null,
    conductivity: null,
    alkalinity: null,
    calcium: null,
    pH: null,
    temperature: null,
    softener: 'unknown',
  },
  machines: [],
  visits: [],
  stock: [],
  snapshots: [],
  scenarios: [],
  glassChecks: [],
})
