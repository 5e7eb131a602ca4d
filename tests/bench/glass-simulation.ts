import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { CAUSE_IDS } from '#core/glass/causes'
import { glassModel } from '#core/glass/model'
import { TESTS } from '#core/glass/tests'
import type { Habits, Order } from './glass-simulation/operator'
import { tally, type Tally } from './glass-simulation/tally'
import { physicalWorld, weightsWorld, type World } from './glass-simulation/worlds'

/**
 * `npx tsx tests/bench/glass-simulation.ts [kitchens per cause]`: how soon the glass check has the true cause among
 * its first two, in seeded kitchens, next to fixed orders and a random one. Writes test-results/glass-simulation.json.
 */
const kitchens = Number(process.argv[2] ?? 400)
const model = glassModel([])
const usual: Habits = { wrong: 0.1, wrongPer: 'answer', cannot: [], record: [] }
const needsKit = TESTS.filter((test) => ['strip', 'meter', 'call'].includes(test.effort)).map(
  (test) => test.id,
)

const arms: readonly (readonly [string, World, Habits, Order])[] = [
  ['physical kitchens, information over effort', physicalWorld, usual, 'gain'],
  ['physical kitchens, easiest first', physicalWorld, usual, 'easiest-first'],
  ['physical kitchens, bench-sheet order', physicalWorld, usual, 'bench'],
  ['physical kitchens, random order', physicalWorld, usual, 'random'],
  ['  every single fact wrong 10 %', physicalWorld, { ...usual, wrongPer: 'fact' }, 'gain'],
  ['  no wrong answers', physicalWorld, { ...usual, wrong: 0 }, 'gain'],
  ['  eyes, cloth and vinegar only', physicalWorld, { ...usual, cannot: needsKit }, 'gain'],
  [
    '  after a visit that measured doses and water',
    physicalWorld,
    { ...usual, record: ['measured', 'water-meters', 'gauges'] },
    'gain',
  ],
  ['kitchens drawn from the weights, information over effort', weightsWorld(model), usual, 'gain'],
  ['kitchens drawn from the weights, easiest first', weightsWorld(model), usual, 'easiest-first'],
  ['kitchens drawn from the weights, random order', weightsWorld(model), usual, 'random'],
  ['  no wrong answers', weightsWorld(model), { ...usual, wrong: 0 }, 'gain'],
]

const percent = (share: number): string => `${Math.round(100 * share)}`.padStart(3)
const results = arms.map(([name, world, habits, order]) => {
  const result = tally({
    world,
    habits,
    order,
    model,
    kitchensPerCause: kitchens,
    seed: 20260309,
    mostTests: TESTS.length,
  })
  console.log(
    `${name.padEnd(58)} ${result.found.map(percent).join(' ')} | by prior at 5: ${percent(result.foundByPrior[5] ?? 0)}` +
      ` | mean tests ${result.meanTests.toFixed(2)} | stopping: ${result.stopped.meanTests.toFixed(2)} tests, ${percent(result.stopped.found)} %`,
  )
  return { name, order, ...result }
})

function table(result: Tally): string {
  const head = `${'true \\ first after 5 tests'.padEnd(26)}${CAUSE_IDS.map((id) => id.slice(0, 8).padStart(9)).join('')}`
  const rows = CAUSE_IDS.map(
    (cause) =>
      `${cause.padEnd(20)}${percent(result.byCause[cause])} % ${CAUSE_IDS.map((first) => percent(result.confusion[cause][first]).padStart(9)).join('')}`,
  )
  return [head, ...rows].join('\n')
}
const first = results[0]
if (first !== undefined)
  console.log(`\nFirst or second, and which cause stood first, percent:\n${table(first)}`)

const out = fileURLToPath(new URL('../../test-results/', import.meta.url))
mkdirSync(out, { recursive: true })
writeFileSync(join(out, 'glass-simulation.json'), `${JSON.stringify({ kitchens, results }, null, 2)}\n`)
