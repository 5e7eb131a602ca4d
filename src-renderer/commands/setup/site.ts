import type { Site, Water } from '#core/records/index'

type SiteFacts = Pick<Site, 'name' | 'currency' | 'units' | 'timeZone' | 'notes' | 'visitEveryDays'>

export const changeSite = (site: Site, facts: Partial<SiteFacts>): Site => ({ ...site, ...facts })

export const changeWater = (site: Site, facts: Partial<Water>): Site => ({
  ...site,
  water: { ...site.water, ...facts },
})
