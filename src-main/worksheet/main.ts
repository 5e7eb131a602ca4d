import { readFileSync, statSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { decode } from '#core/documents/decode'
import { DOCUMENT_LIMITS } from '#core/documents/limits'
import { worksheetJson } from '#core/documents/worksheet-json'
import { sentence } from '#core/messages/sentence'
import { computeWorksheet } from '#core/worksheet/compute'
import { glassOf } from '#core/worksheet/glass-of'
import { spendOf } from '#core/worksheet/spend-of'
import { worksheetText } from './text'

/**
 * `npm run worksheet -- FILE [--json] [--as-of DAY]`: a site file in, its worksheet out. Reads, computes, prints;
 * writes nothing. Exit code 2 and one sentence when the call or the file is not right.
 */
const USAGE = 'Use: npm run worksheet -- FILE [--json] [--as-of 2026-03-09]'

function refuse(text: string): never {
  process.stderr.write(`${text}\n`)
  process.exit(2)
}

function options(): { readonly file: string; readonly json: boolean; readonly asOf: string } {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { json: { type: 'boolean', default: false }, 'as-of': { type: 'string' } },
    })
    const [file, ...more] = positionals
    const asOf = values['as-of'] ?? new Date().toISOString().slice(0, 10)
    if (file === undefined || more.length > 0) return refuse(`Name one site file. ${USAGE}`)
    if (!/^\d{4}-\d{2}-\d{2}$/u.test(asOf) || Number.isNaN(Date.parse(asOf)))
      return refuse(`"${asOf}" is not a day. Write it as 2026-03-09.`)
    return { file, json: values.json, asOf }
  } catch {
    return refuse(`That is not how this command is called. ${USAGE}`)
  }
}

function text(file: string): string {
  try {
    if (statSync(file).size > 4 * DOCUMENT_LIMITS.characters)
      return refuse(sentence({ code: 'document-too-large', megabytes: Math.ceil(statSync(file).size / 1e6) }))
    return readFileSync(file, 'utf8')
  } catch {
    return refuse(`${file} cannot be read. Check the name and that you may open it.`)
  }
}

const { file, json, asOf } = options()
const decoded = decode('site', text(file))
if (!decoded.ok) refuse(`${file}: ${sentence(decoded.problem)}`)
const { site, products, instruments } = decoded.value.document
const worksheet = computeWorksheet({ site, products, instruments, settings: null, asOf })
/** how likely stock must last until a delivery, where no settings say so */
const SERVICE_LEVEL = '95'

const spend = spendOf(worksheet, { site, products, settings: { serviceLevel: SERVICE_LEVEL } })

function asJson(): string {
  return `${JSON.stringify(worksheetJson(worksheet, sentence, spend, glassOf(worksheet, site)), null, 2)}\n`
}

process.stdout.write(json ? asJson() : worksheetText(worksheet, { site, products, instruments, spend }))
