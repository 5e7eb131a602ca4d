import { addDays } from '../units/days'

const DAY = /^\d{4}-\d{2}-\d{2}$/u
const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:\.\d{1,9})?Z$/u

/**
 * A copy of a plain JSON document with every calendar day and every instant moved by whole days. Demo sites use it, so
 * that their last visit is always a few days old. Proleptic Gregorian calendar; years 1 to 9999.
 */
export function shiftDays<T>(document: T, days: number): T {
  return walk(document, days) as T
}

function walk(node: unknown, days: number): unknown {
  if (typeof node === 'string') {
    if (DAY.test(node)) return addDays(node, days)
    return INSTANT.test(node) ? addDays(node, days) + node.slice(10) : node
  }
  if (Array.isArray(node)) return node.map((item) => walk(item, days))
  if (typeof node !== 'object' || node === null) return node
  return Object.fromEntries(Object.entries(node).map(([key, value]) => [key, walk(value, days)]))
}
