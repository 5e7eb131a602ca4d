import type { SiteFile } from '#core/documents/site-schema'
import type { SetupSnapshot, Visit } from '#core/records/index'
import { addDays } from '#core/units/days'
import { entry } from '#core/units/entry'
import { caught, cylinder, machine, product, pump, run, site, uuid, visit, work } from '../support/make-site'
import { seededRandom } from '../support/seeded-random'

/** A site with three pumps and `visits` closed visits, each with an as-found and an as-left series of `runs` runs. */
export function bigSite(visits: number, runs: number, seed = 1): SiteFile {
  const random = seededRandom(seed)
  const glass = cylinder({ capacity: entry('500', 'mL'), graduation: entry('5', 'mL') })
  const products = [
    product({ name: 'Rinse aid' }),
    product({ name: 'Detergent', role: 'detergent', density: entry('1.2', 'g/mL') }),
    product({
      name: 'Sanitizer',
      role: 'sanitizer',
      density: entry('1.15', 'g/mL'),
      strength: { kind: 'trade-percent', percent: '9.5', measuredOn: '2026-01-01' },
    }),
  ]
  const pumps = [
    pump({
      productId: products[0]?.id ?? null,
      window: { basis: 'ppm-vv', low: '180', target: '200', high: '220' },
    }),
    pump({
      role: 'detergent',
      productId: products[1]?.id ?? null,
      feeds: 'wash-tank',
      window: { basis: 'g-per-L-tank', low: '1.8', target: '2', high: '2.2' },
    }),
    pump({
      role: 'sanitizer',
      productId: products[2]?.id ?? null,
      window: { basis: 'mg-per-L-active', low: '50', target: '60', high: '75' },
    }),
  ]
  const machines = [machine({ pumps })]
  const base = site({ machines })
  const snapshot: SetupSnapshot = {
    id: uuid(),
    at: '2020-01-01T09:00:00.000Z',
    machines,
    water: base.water,
    products,
    instruments: [glass],
  }
  const flows = [5, 60, 22]
  const series = (flow: number, at: string): ReturnType<typeof caught> =>
    caught(
      Array.from({ length: runs }, () =>
        run(entry((flow * (1 + 0.02 * (random.uniform() - 0.5))).toFixed(2), 'mL')),
      ),
      { at, instrumentId: glass.id },
    )
  const history = Array.from({ length: visits }, (_, index): Visit => {
    const at = `${addDays('2020-01-05', index * 14)}T08:10:00.000Z`
    return visit({
      startedAt: at,
      closing: { at, nextVisitOn: null, customerName: '', signedBy: '' },
      setupId: snapshot.id,
      work: pumps.map((one, i) => {
        const flow = flows[i] ?? 10
        return work(one.id, [
          series(flow * 0.94, at),
          { kind: 'turn', id: uuid(), at, eighths: 1 },
          series(flow, at),
        ])
      }),
    })
  })
  return {
    format: 'dosewright-site',
    version: 2,
    site: { ...base, visits: history, snapshots: [snapshot] },
    products,
    instruments: [glass],
  }
}
