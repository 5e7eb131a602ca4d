import type { SiteCheckRow } from '#core/cautions/site-checks'
import type { SiteCheck } from '#core/records/index'

/** The conditions as a walk round the machine takes them. */
const GROUPS: readonly { readonly name: string; readonly checks: readonly SiteCheck[] }[] = [
  {
    name: 'Water and heat',
    checks: ['supply-pressure', 'rinse-pressure', 'rinse-temperature', 'wash-temperature', 'water-recorded'],
  },
  { name: 'Drain and tank', checks: ['drain-air-gap', 'drain-loop', 'tank-level'] },
  {
    name: 'Containers and tubes',
    checks: [
      'containers-low',
      'pick-up-and-cap',
      'primed-after-change',
      'tubes-as-installed',
      'label-matches-record',
    ],
  },
  {
    name: 'Machine and signals',
    checks: [
      'rack-signal',
      'jets-and-screens',
      'proof-of-delivery',
      'power-to-nameplate',
      'high-limit-thermostats',
    ],
  },
]

export interface CheckGroup {
  readonly name: string
  readonly rows: readonly SiteCheckRow[]
}

/** The conditions that apply, by group; a group none of whose conditions apply is left out. */
export const checkGroups = (rows: readonly SiteCheckRow[]): readonly CheckGroup[] =>
  GROUPS.map(({ name, checks }) => ({
    name,
    rows: checks.flatMap((check) => rows.filter((row) => row.check === check)),
  })).filter((group) => group.rows.length > 0)
