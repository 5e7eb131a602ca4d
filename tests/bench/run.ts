import { existsSync, mkdirSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { decode } from '#core/documents/decode'
import { encode } from '#core/documents/encode'
import { bigSite } from './big-site'
import { glassSimulation } from './glass-simulation'
import { ratioOf, timedTogether, told, type Ratio } from './measure'
import { saving } from './saving'
import { screwSimulation } from './screw-simulation'
import { printScrewSimulation } from './screw-simulation/print'
import { start, toldStart, type Start } from './start'
import { measureWindow, toldWindow, type WindowFigures } from './window'
import { oneSite, portfolio } from './worksheets'

/**
 * `npm run bench`: how far each job is from the least that could be done, as ratios of medians from one run on one
 * machine. What computes is timed by the processor, what waits for a disk by the wall. `npm run bench -- 1000` makes
 * the portfolio smaller than its 10 000 sites; what it measures in a browser then takes minutes less. Writes test-results/bench.json.
 */
const sites = Number(process.argv[2] ?? 10_000)

async function decoding(): Promise<readonly Ratio[]> {
  const text = encode('site', bigSite(120, 5))
  const prepare = (): string => text
  const [floor, ours] = await timedTogether(
    [
      { work: (one: string) => JSON.parse(one) as unknown, prepare },
      { work: (one: string) => decode('site', one), prepare },
    ],
    40,
  )
  return floor === undefined || ours === undefined
    ? []
    : [ratioOf(`(c) decode of a site file of ${(text.length / 1e6).toFixed(1)} MB`, 3, ours, floor)]
}

const results: Ratio[] = []
const tell = (ratios: readonly Ratio[]): void => {
  for (const one of ratios) console.log(told(one))
  results.push(...ratios)
}

// first, as in the program, where a portfolio is worked out before a history is read through
const { ratio, growth } = portfolio(sites)
tell(await oneSite())
tell([ratio])
tell(await decoding())
tell(await saving())
console.log(
  `(e) time per site of a portfolio of ${growth.map((one) => `${one.sites}: ${one.perSite.toFixed(3)} ms`).join(', ')}`,
)

const starts: Start[] = []
let window: WindowFigures | null = null
if (existsSync(fileURLToPath(new URL('../../out/main/local-host.js', import.meta.url)))) {
  for (const count of [1, 10, 100]) {
    const found = await start(count)
    starts.push(found)
    console.log(toldStart(found))
  }
  window = await measureWindow(sites)
  for (const line of toldWindow(window)) console.log(line)
} else console.log('The program is not built, so the window was not measured: npm run build')

glassSimulation(100)
console.log(printScrewSimulation(screwSimulation(10_000)))

const out = fileURLToPath(new URL('../../test-results/', import.meta.url))
mkdirSync(out, { recursive: true })
writeFileSync(`${out}bench.json`, `${JSON.stringify({ ratios: results, growth, starts, window }, null, 2)}\n`)
