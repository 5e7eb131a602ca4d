import type { z } from 'zod'

/** Where a value does not fit its schema, and why, in words that finish the sentence "... <reason>". */
export interface SchemaFault {
  readonly place: string
  readonly reason: string
}

type Issue = z.core.$ZodIssue

/** The first fault of a refused value. The place is a dotted path, empty for the whole value. */
export function firstFault(error: z.ZodError | z.core.$ZodError): SchemaFault {
  const issue = error.issues[0]
  return issue === undefined ? { place: '', reason: 'does not fit' } : faultOf(issue, [])
}

function faultOf(issue: Issue, above: readonly PropertyKey[]): SchemaFault {
  const path = [...above, ...issue.path]
  if (issue.code === 'invalid_union') {
    const deepest = deepestIssue(issue)
    if (deepest !== null) return faultOf(deepest, path)
  }
  return { place: path.map(String).join('.'), reason: reasonOf(issue) }
}

/** Of all branches of a union, the one that was understood furthest. */
function deepestIssue(issue: z.core.$ZodIssueInvalidUnion): Issue | null {
  const candidates = issue.errors.flatMap((branch) => branch.slice(0, 1))
  return candidates.reduce<Issue | null>(
    (best, next) => (best === null || next.path.length > best.path.length ? next : best),
    null,
  )
}

function reasonOf(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined
        ? 'is missing'
        : `is not ${KIND[issue.expected] ?? 'of the kind expected'}`
    case 'too_big':
      return issue.origin === 'string'
        ? `is longer than ${issue.maximum} characters`
        : issue.origin === 'array'
          ? `has more than ${issue.maximum} items`
          : `is above ${issue.maximum}`
    case 'too_small':
      return issue.origin === 'string' ? 'is too short' : `is below ${issue.minimum}`
    case 'invalid_value':
      return `is not one of: ${issue.values.slice(0, 12).map(String).join(', ')}`
    case 'unrecognized_keys':
      return `has a part this program does not know: ${issue.keys.slice(0, 3).join(', ').slice(0, 80)}`
    case 'invalid_union':
      return 'is of a kind this program does not know'
    case 'invalid_format':
      return (
        FORMAT[issue.format] ??
        (issue.message.startsWith('is ') ? issue.message : 'is not written as expected')
      )
    case 'custom':
      return issue.message
    default:
      return 'does not fit'
  }
}

const KIND: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a group of parts',
  array: 'a list',
  null: 'empty',
}

const FORMAT: Readonly<Record<string, string>> = {
  uuid: 'is not an id of this program (a UUID)',
  date: 'is not a calendar day such as 2026-03-09',
  datetime: 'is not an instant such as 2026-03-09T14:05:00.000Z',
}
