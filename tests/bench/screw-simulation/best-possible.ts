import { runsInstead } from '#core/screw/stop-rule'
import { advice, type Strategy } from './strategies'
import { chance } from './chance'
import type { VisitPlayed } from './visit'
import { playVisit } from './visit'
import { VirtualPump } from './virtual-pump'

interface Guess {
  readonly gain: number
  readonly bend: number
  /** turns from where the as-found test stood to where the last one did */
  readonly at: number
  readonly weight: number
}

/**
 * An upper bound that no advice can pass: the share of second visits settled by at most one move by somebody who knows
 * the rules of this virtual world exactly, weighs everything the first visit showed by Bayes' rule (importance sampling,
 * `draws` per pump), reads today's as-found flow without any error, and needs no proof: to be inside the window is
 * enough. `margin`: how far inside, as a share of the target, to allow for what a proof needs.
 */
export function bestPossibleSecondVisit(
  pumps: number,
  draws: number,
  margins: readonly number[],
  seeds: number,
): readonly Bound[] {
  const tally = new Tally(margins)
  for (let seed = seeds; tally.played < pumps; seed++) {
    const pump = new VirtualPump(seed, 'sound')
    const visit = playVisit(pump, advice)
    if (!visit.provedIn || visit.turns === 0) continue
    pump.driftAnew(0.3)
    const guesses = posterior(pump.target, visit, seed, draws)
    tally.add(guesses, pump)
    const proving = playVisit(pump, allKnowing(guesses, pump))
    tally.prove(proving.provedIn && proving.turns <= 1)
  }
  return tally.bounds()
}

/** The same for a first visit: somebody who knows how the gains of all pumps lie, and nothing of this one. */
export function bestPossibleFirstVisit(
  pumps: number,
  draws: number,
  margins: readonly number[],
  seeds: number,
): readonly Bound[] {
  const tally = new Tally(margins)
  for (let seed = seeds; tally.played < pumps; seed++) {
    const pump = new VirtualPump(seed, 'sound')
    const c = chance(7 * seed + 1)
    const guesses = Array.from({ length: draws }, () => ({
      gain: pump.target * c.logUniform(0.15, 0.8),
      bend: c.uniform(-0.3, 0.3),
      at: 0,
      weight: 1 / draws,
    }))
    tally.add(guesses, pump)
  }
  return tally.bounds()
}

export interface Bound {
  /** how far inside the window a proof is taken to need, share of the target */
  readonly margin: number
  readonly share: number
  /** standard error of the share, from the pumps played */
  readonly standardError: number
  /** share of the same pumps proved in with at most one move that was the best there is; null where not played */
  readonly proved: number | null
}

/** Makes the best move there is, and proves it as everybody has to; runs come before it where they would do. */
function allKnowing(guesses: readonly Guess[], pump: VirtualPump): Strategy {
  const missing = 1 - pump.flow() / pump.target
  let moved = false
  return (question) => {
    const last = question.observations.at(-1)
    const more = last === undefined ? null : runsInstead(last, question)
    if (more !== null) return { kind: 'runs', more }
    if (moved) return { kind: 'end', why: 'one move made' }
    moved = true
    const { eighths } = bestMove(guesses, pump.target, missing, 0.08)
    return { kind: 'turn', eighths, fromBelow: eighths < 0, expected: null }
  }
}

class Tally {
  played = 0
  #proofs: boolean[] = []
  readonly #chances: number[][]
  constructor(readonly margins: readonly number[]) {
    this.#chances = margins.map(() => [])
  }
  add(guesses: readonly Guess[], pump: VirtualPump): void {
    const missing = 1 - pump.flow() / pump.target
    this.played += 1
    this.margins.forEach((margin, i) =>
      this.#chances[i]?.push(bestChance(guesses, pump.target, missing, 0.1 - margin)),
    )
  }
  prove(done: boolean): void {
    this.#proofs.push(done)
  }
  bounds(): readonly Bound[] {
    const proofs = this.#proofs
    const proved = proofs.length === 0 ? null : proofs.filter(Boolean).length / proofs.length
    return this.margins.map((margin, i) => {
      const all = this.#chances[i] ?? []
      const share = all.reduce((sum, one) => sum + one, 0) / all.length
      const variance = all.reduce((sum, one) => sum + (one - share) ** 2, 0) / Math.max(1, all.length - 1)
      return { margin, share, standardError: Math.sqrt(variance / all.length), proved }
    })
  }
}

function posterior(target: number, visit: VisitPlayed, seed: number, draws: number): readonly Guess[] {
  const c = chance(7 * seed + 1)
  const [first] = visit.observations
  if (first === undefined) return []
  const guesses = Array.from({ length: draws }, () => {
    const gain = target * c.logUniform(0.15, 0.8)
    const bend = c.uniform(-0.3, 0.3)
    const play = c.uniform(0, 0.25)
    const lost = c.uniform(0, 1) < 0.5 ? play : 0
    const scatter = c.uniform(0.005, 0.03)
    const level = first.flow * (1 + (scatter * c.normal()) / Math.sqrt(first.runs ?? 3))
    const weight = logWeight(visit, target, { gain, bend, lost, scatter, level })
    return { gain, bend, at: (visit.observations.at(-1)?.eighths ?? 0) / 8 - lost, weight }
  })
  const best = Math.max(...guesses.map((g) => g.weight))
  const raw = guesses.map((g) => ({ ...g, weight: Math.exp(g.weight - best) }))
  const total = raw.reduce((sum, g) => sum + g.weight, 0)
  return raw.filter((g) => g.weight > 1e-6).map((g) => ({ ...g, weight: g.weight / total }))
}

interface World {
  readonly gain: number
  readonly bend: number
  readonly lost: number
  readonly scatter: number
  readonly level: number
}

function logWeight(visit: VisitPlayed, target: number, w: World): number {
  let log = -0.5 * (Math.log(w.level / target) / 0.3) ** 2 - Math.log(w.level)
  visit.observations.forEach((o, i) => {
    const runs = o.runs ?? 3
    const flow = w.level + (i === 0 ? 0 : w.gain * travelled(w.bend, o.eighths / 8 - w.lost))
    const ofMean = (w.scatter * flow) / Math.sqrt(runs)
    if (!(flow > 0)) log = -Infinity
    else if (i > 0) log += -0.5 * ((o.flow - flow) / ofMean) ** 2 - Math.log(ofMean)
    const seen = (o.scatter ?? 0) / ofMean
    log += -(runs - 1) * (Math.log(w.scatter * Math.max(flow, 1e-9)) + 0.5 * seen * seen)
  })
  return log
}

const bestChance = (guesses: readonly Guess[], target: number, missing: number, reach: number): number =>
  Math.abs(missing) <= reach ? 1 : bestMove(guesses, target, missing, reach).chance

/** The move in eighths that most of the guesses put within `reach` of the target, as a share of it. */
function bestMove(guesses: readonly Guess[], target: number, missing: number, reach: number) {
  const towards = Math.sign(missing) || 1
  let best = { eighths: towards, chance: 0 }
  for (let size = 1; size <= 60; size++) {
    const turns = (towards * size) / 8
    let chance = 0
    for (const g of guesses) {
      const gained = (g.gain * (travelled(g.bend, g.at + turns) - travelled(g.bend, g.at))) / target
      if (Math.abs(missing - gained) <= reach) chance += g.weight
    }
    if (chance > best.chance) best = { eighths: towards * size, chance }
  }
  return best
}

function travelled(bend: number, turns: number): number {
  const bent = Math.min(Math.abs(turns), 4)
  return turns + bend * (bent * bent * 0.125 + (Math.abs(turns) - bent))
}
