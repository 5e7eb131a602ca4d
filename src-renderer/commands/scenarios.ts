import type { Id, Scenario, Site } from '#core/records/index'

type PumpChange = Scenario['changes'][number]

/** A what-if that changes nothing yet. */
export const addScenario = (site: Site, id: Id, name: string): Site => ({
  ...site,
  scenarios: [...site.scenarios, { id, name, racksPercent: null, rinseVolumePercent: null, changes: [] }],
})

export const copyScenario = (site: Site, id: Id, newId: Id, name: string): Site => {
  const original = site.scenarios.find((scenario) => scenario.id === id)
  return original === undefined
    ? site
    : { ...site, scenarios: [...site.scenarios, { ...original, id: newId, name }] }
}

export const removeScenario = (site: Site, id: Id): Site => ({
  ...site,
  scenarios: site.scenarios.filter((scenario) => scenario.id !== id),
})

export const setScenario = (
  site: Site,
  id: Id,
  change: Partial<Pick<Scenario, 'name' | 'racksPercent' | 'rinseVolumePercent'>>,
): Site => ({
  ...site,
  scenarios: site.scenarios.map((scenario) => (scenario.id === id ? { ...scenario, ...change } : scenario)),
})

/** Changes what a what-if does to one pump; a pump with nothing changed is left out of the record. */
export const setPumpChange = (
  site: Site,
  id: Id,
  pumpId: Id,
  change: Partial<Omit<PumpChange, 'pumpId'>>,
): Site => ({
  ...site,
  scenarios: site.scenarios.map((scenario) =>
    scenario.id === id ? { ...scenario, changes: changed(scenario.changes, pumpId, change) } : scenario,
  ),
})

const UNCHANGED: Omit<PumpChange, 'pumpId'> = {
  productId: null,
  dosePercent: null,
  pricePerContainer: null,
  containerSize: null,
  strengthPercent: null,
}

function changed(
  changes: readonly PumpChange[],
  pumpId: Id,
  change: Partial<Omit<PumpChange, 'pumpId'>>,
): readonly PumpChange[] {
  const before = changes.find((item) => item.pumpId === pumpId) ?? { pumpId, ...UNCHANGED }
  const after = { ...before, ...change }
  const { pumpId: _pump, ...values } = after
  const others = changes.filter((item) => item.pumpId !== pumpId)
  return Object.values(values).every((value) => value === null) ? others : [...others, after]
}

/** What a what-if does to a pump today, nothing when it leaves it alone. */
export const pumpChange = (scenario: Scenario, pumpId: Id): PumpChange =>
  scenario.changes.find((item) => item.pumpId === pumpId) ?? { pumpId, ...UNCHANGED }
