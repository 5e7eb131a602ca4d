/**
 * What a document may be before anything of it is believed. A site with ten years of weekly visits stays under 10 MB;
 * the deepest path of version 1 (visit, work, step, run, entry) has 11 levels.
 */
export const DOCUMENT_LIMITS = { characters: 32_000_000, depth: 40 } as const

/** Megabytes of a text for a person, rounded up so that it never reads 0. */
export const megabytes = (characters: number): number => Math.max(1, Math.ceil(characters / 1_000_000))

/** Keys that reach the prototype of an object in some program or other; refused wherever they stand. */
export const PROTOTYPE_NAMES: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype'])
