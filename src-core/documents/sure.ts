import type { z } from 'zod'

/** Whether a value, fresh from JSON, is exactly what its schema would give back. Freezes what the schema freezes. */
export type Sure = (value: unknown) => boolean

/**
 * A quick yes for a schema: true only where the schema accepts the value and gives an equal one back, its keys in the
 * same order. The caller then keeps the value itself, without the copy the schema makes. False says nothing: the
 * schema decides, and names the fault. Knows the parts the documents are made of; any other is never sure.
 *
 * A false answer leaves what was looked at frozen, so give it only values nobody else holds.
 */
export function sureOf(schema: z.core.$ZodType): Sure {
  const known = made.get(schema)
  if (known !== undefined) return known
  const sure = make((schema as z.core.$ZodTypes)._zod.def)
  made.set(schema, sure)
  return sure
}

const made = new WeakMap<z.core.$ZodType, Sure>()
const never: Sure = () => false
/** Where checks are looked into; a check anywhere else, such as a refinement, is more than is known here. */
const CHECKED: ReadonlySet<string> = new Set(['string', 'number', 'array'])

function make(def: z.core.$ZodTypes['_zod']['def']): Sure {
  if (def.checks !== undefined && def.checks.length > 0 && !CHECKED.has(def.type)) return never
  switch (def.type) {
    case 'readonly':
      return holdsLists(def.innerType) && settles(def.innerType)
        ? once(frozen(sureOf(def.innerType)))
        : frozen(sureOf(def.innerType))
    case 'nullable':
      return orNull(sureOf(def.innerType))
    case 'optional':
      // where it is there, it is what it says; a group asks whether it may be missing
      return sureOf(def.innerType)
    case 'object':
      return group(def)
    case 'array':
      return list(def)
    case 'union':
      return choice(def)
    case 'string':
      return text(def)
    case 'number':
      return whole(def)
    case 'enum':
      return oneOf(Object.values(def.entries))
    case 'literal':
      return oneOf(def.values)
    case 'boolean':
      return (value) => typeof value === 'boolean'
    default:
      return never
  }
}

const frozen =
  (inner: Sure): Sure =>
  (value) =>
    inner(value) && Object.isFrozen(Object.freeze(value))

/** What was found good and cannot change any more is good the next time: of a site saved again, all but what was edited. */
function once(sure: Sure): Sure {
  const good = new WeakSet<object>()
  return (value) => {
    if (typeof value === 'object' && value !== null && good.has(value)) return true
    const is = sure(value)
    if (is && typeof value === 'object' && value !== null) good.add(value)
    return is
  }
}

/** Smaller parts are looked at again faster than they are remembered. */
const holdsLists = (schema: z.core.$ZodType): boolean => {
  const { def } = (schema as z.core.$ZodTypes)._zod
  return def.type === 'object' && Object.values(def.shape).some((part) => kindOf(part) === 'array')
}

const kindOf = (schema: z.core.$ZodType): string => {
  const { def } = (schema as z.core.$ZodTypes)._zod
  return def.type === 'readonly' || def.type === 'nullable' || def.type === 'optional'
    ? kindOf(def.innerType)
    : def.type
}

/** Whether every group and list below is frozen by its schema too. */
function settles(schema: z.core.$ZodType): boolean {
  const { def } = (schema as z.core.$ZodTypes)._zod
  switch (def.type) {
    case 'object':
      return Object.values(def.shape).every(frozenOrPlain)
    case 'array':
      return frozenOrPlain(def.element)
    case 'union':
      return def.options.every(settles)
    default:
      return false
  }
}

function frozenOrPlain(schema: z.core.$ZodType): boolean {
  const { def } = (schema as z.core.$ZodTypes)._zod
  switch (def.type) {
    case 'readonly':
      return settles(def.innerType)
    case 'nullable':
    case 'optional':
      return frozenOrPlain(def.innerType)
    case 'union':
      return def.options.every(frozenOrPlain)
    case 'string':
    case 'number':
    case 'boolean':
    case 'enum':
    case 'literal':
      return true
    default:
      return false
  }
}

const orNull =
  (inner: Sure): Sure =>
  (value) =>
    value === null || inner(value)

function oneOf(values: readonly unknown[]): Sure {
  const all = new Set(values)
  return (value) => all.has(value)
}

/** A group whose keys are all known, and all there but those that may be missing, in the order of the schema. */
function group(def: z.core.$ZodObjectDef): Sure {
  if (def.catchall?._zod.def.type !== 'never') return never
  const keys = Object.keys(def.shape)
  const parts = Object.values(def.shape).map(sureOf)
  const mayMiss = Object.values(def.shape).map(
    (part) => (part as z.core.$ZodTypes)._zod.def.type === 'optional',
  )
  return (value) => {
    if (!isGroup(value)) return false
    let at = 0
    for (const key in value) {
      while (key !== keys[at] && mayMiss[at] === true) at += 1
      if (key !== keys[at] || parts[at]?.(value[key]) !== true) return false
      at += 1
    }
    while (mayMiss[at] === true) at += 1
    return at === keys.length
  }
}

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function list(def: z.core.$ZodArrayDef): Sure {
  const rules = rulesOf(def)
  if (rules === null) return never
  const item = sureOf(def.element)
  return (value) => Array.isArray(value) && keeps(value, rules) && value.every(item)
}

/** Groups told apart by a key that is a literal in each of them. */
function choice(def: z.core.$ZodUnionDef & { readonly discriminator?: string }): Sure {
  const { discriminator } = def
  if (discriminator === undefined) return never
  const byKind = new Map<unknown, Sure>()
  for (const option of def.options) {
    const kind = literalsOf(option, discriminator)
    if (kind === null) return never
    for (const one of kind) byKind.set(one, sureOf(option))
  }
  return (value) => isGroup(value) && byKind.get(value[discriminator])?.(value) === true
}

function literalsOf(option: z.core.$ZodType, key: string): readonly unknown[] | null {
  const { def } = (option as z.core.$ZodTypes)._zod
  if (def.type === 'readonly') return literalsOf(def.innerType, key)
  const part = def.type === 'object' ? (def.shape[key] as z.core.$ZodTypes | undefined)?._zod.def : undefined
  return part?.type === 'literal' ? part.values : null
}

type Rule = (value: never) => boolean

function text(def: z.core.$ZodStringDef): Sure {
  const rules = def.coerce === true ? null : rulesOf(def)
  return rules === null ? never : (value) => typeof value === 'string' && keeps(value, rules)
}

function whole(def: z.core.$ZodNumberDef): Sure {
  const rules = def.coerce === true ? null : rulesOf(def)
  return rules === null ? never : (value) => Number.isSafeInteger(value) && keeps(value, rules)
}

const keeps = (value: unknown, rules: readonly Rule[]): boolean => rules.every((rule) => rule(value as never))

/** The checks of a schema, its own format among them; null when one of them is of a kind that is not known here. */
function rulesOf(def: z.core.$ZodTypeDef): readonly Rule[] | null {
  const own = 'check' in def ? [def as unknown as z.core.$ZodCheckDef] : []
  const rules = [...own, ...(def.checks ?? []).map((check) => check._zod.def)].map(ruleOf)
  return rules.every((rule) => rule !== null) ? rules : null
}

/** Formats that are their pattern and nothing else. */
const BY_PATTERN: ReadonlySet<string> = new Set(['regex', 'uuid', 'date', 'datetime'])

const atMost =
  (limit: number): Rule =>
  (value: number) =>
    value <= limit
const atLeast =
  (limit: number): Rule =>
  (value: number) =>
    value >= limit

function ruleOf(given: z.core.$ZodCheckDef): Rule | null {
  const def = given as z.core.$ZodChecks['_zod']['def']
  switch (def.check) {
    case 'max_length':
      return (value: { readonly length: number }) => value.length <= def.maximum
    case 'less_than':
      return def.inclusive && typeof def.value === 'number' ? atMost(def.value) : null
    case 'greater_than':
      return def.inclusive && typeof def.value === 'number' ? atLeast(def.value) : null
    case 'number_format':
      return def.format === 'safeint' ? () => true : null
    case 'string_format': {
      const { pattern } = def
      if (pattern === undefined || !BY_PATTERN.has(def.format) || /[gy]/u.test(pattern.flags)) return null
      return (value: string) => pattern.test(value)
    }
    default:
      return null
  }
}
