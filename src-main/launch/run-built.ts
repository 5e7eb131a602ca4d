import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { ensureBuilt, ROOT } from './built'

// `tsx run-built.ts NAME ARGS`: runs out/main/NAME.js, built first if need be. Standard output belongs to the program.
const [name = '', ...args] = process.argv.slice(2)
const built = ensureBuilt((line) => console.error(line))
if (built !== 0) process.exit(built)
const program = join(ROOT, 'out', 'main', `${name}.js`)
if (!/^[a-z-]+$/.test(name) || !existsSync(program)) {
  console.error(`There is no program "${name}" here.`)
  process.exit(2)
}
const run = spawnSync(process.execPath, [program, ...args], { stdio: 'inherit' })
process.exit(run.status ?? 1)
