import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { ensureChromium } from './chromium'

/**
 * `npm test`: every check, cheapest first, all of them even when one fails. Closes with one line of counts.
 */
const root = fileURLToPath(new URL('../..', import.meta.url))
const reports = `${root}test-results/`

interface Counted {
  readonly passed: number
  readonly failed: number
  /** those of `passed` that failed before, on a machine that is busy with other things */
  readonly atSecondTry?: readonly string[]
}

/** What the browser tests report of a file or a group in it. */
interface Suite {
  readonly suites?: readonly Suite[]
  readonly specs: readonly {
    readonly title: string
    readonly tests: readonly { readonly status: string }[]
  }[]
}

const titlesOfFlaky = (suites: readonly Suite[]): readonly string[] =>
  suites.flatMap(({ suites: inner = [], specs }) => [
    ...specs.filter(({ tests }) => tests.some(({ status }) => status === 'flaky')).map(({ title }) => title),
    ...titlesOfFlaky(inner),
  ])

interface Step {
  readonly name: string
  readonly run: () => Counted
}

function command(line: string, extra: Record<string, string> = {}): number {
  const [program = '', ...rest] = line.split(' ')
  const done = spawnSync('npx', ['--no-install', program, ...rest], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...extra },
  })
  return done.status ?? 1
}

const check = (line: string) => (): Counted =>
  command(line) === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 }

/** Counts of a report, or one failure when the runner could not even write it. */
function counted(file: string, status: number, read: (report: never) => Counted): Counted {
  if (!existsSync(file)) return { passed: 0, failed: 1 }
  const counts = read(JSON.parse(readFileSync(file, 'utf8')) as never)
  return status !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts
}

function unit(): Counted {
  const file = `${reports}unit.json`
  const status = command(
    `vitest run --config tests/vitest.config.ts --reporter=default --reporter=json --outputFile.json=${file}`,
  )
  return counted(file, status, (report: { numPassedTests: number; numFailedTests: number }) => ({
    passed: report.numPassedTests,
    failed: report.numFailedTests,
  }))
}

function browser(project: string) {
  return (): Counted => {
    const file = `${reports}${project}.json`
    const status = command(`playwright test --config tests/e2e/playwright.config.ts --project ${project}`, {
      PLAYWRIGHT_JSON_OUTPUT_FILE: file,
    })
    return counted(
      file,
      status,
      ({
        stats,
        suites,
      }: {
        stats: Record<'expected' | 'unexpected' | 'flaky', number>
        suites: Suite[]
      }) => ({
        passed: stats.expected + stats.flaky,
        failed: stats.unexpected,
        atSecondTry: titlesOfFlaky(suites),
      }),
    )
  }
}

const electronRuntime = existsSync(`${root}node_modules/electron/dist`)

const steps: readonly Step[] = [
  { name: 'types of the core', run: check('tsc -p src-core') },
  { name: 'types of the hosts', run: check('tsc -p src-main') },
  { name: 'types of the screens', run: check('svelte-check --tsconfig src-renderer/tsconfig.json') },
  { name: 'types of the tests', run: check('tsc -p tests') },
  { name: 'lint', run: check('oxlint') },
  { name: 'format', run: check('prettier --check --log-level warn .') },
  { name: 'arrows', run: check('depcruise src-core src-main src-renderer --config .dependency-cruiser.mjs') },
  { name: 'build', run: check('electron-vite build --logLevel warn') },
  { name: 'unit, references, contract, hosts', run: unit },
  { name: 'in Chromium on the local window host', run: browser('chromium') },
  ...(electronRuntime ? [{ name: 'in the desktop window', run: browser('electron') }] : []),
]

rmSync(reports, { recursive: true, force: true })
mkdirSync(reports, { recursive: true })
await ensureChromium()

let passed = 0
let failed = 0
const failures: string[] = []
const atSecondTry: string[] = []
for (const step of steps) {
  console.log(`\n== ${step.name}`)
  const began = Date.now()
  const counts = step.run()
  passed += counts.passed
  failed += counts.failed
  atSecondTry.push(...(counts.atSecondTry ?? []))
  if (counts.failed > 0) failures.push(step.name)
  console.log(
    `== ${step.name}: ${counts.failed === 0 ? 'good' : 'FAILED'} in ${((Date.now() - began) / 1000).toFixed(1)} s`,
  )
}
if (!electronRuntime)
  console.log('\nThe Electron runtime is not installed here: the desktop end-to-end tests were not run.')
if (atSecondTry.length > 0)
  console.log(`\nPassed at the second try only, to be looked into:\n  ${atSecondTry.join('\n  ')}`)
if (failures.length > 0) console.log(`\nFailed: ${failures.join(', ')}`)
console.log(`\n${passed} passed, ${failed} failed`)
process.exit(failed === 0 ? 0 : 1)
