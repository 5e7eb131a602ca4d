import { advice } from './strategies'
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
export function bestPossibleSecondVisit(pumps: number, draws: number, margins: readonly number[]): number[] {
  const settled = margins.map(() => 0)
  let played = 0
  for (let seed = 1; played < pumps; seed++) {
    const pump = new VirtualPump(900_000 + seed, 'sound')
    const visit = playVisit(pump, advice)
    if (!visit.provedIn || visit.turns === 0) continue
    played += 1
    pump.driftAnew(0.3)
    const missing = 1 - pump.flow() / pump.target
    const guesses = posterior(pump.target, visit, seed, draws)
    margins.forEach((margin, i) => {
      settled[i] = (settled[i] ?? 0) + bestChance(guesses, pump.target, missing, 0.1 - margin)
    })
  }
  return settled.map((sum) => sum / pumps)
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

function bestChance(guesses: readonly Guess[], target: number, missing: number, reach: number): number {
  if (Math.abs(missing) <= reach) return 1
  let best = 0
  for (let size = 1; size <= 60; size++) {
    const turns = (Math.sign(missing) * size) / 8
    let sum = 0
    for (const g of guesses) {
      const gained = (g.gain * (travelled(g.bend, g.at + turns) - travelled(g.bend, g.at))) / target
      if (Math.abs(missing - gained) <= reach) sum += g.weight
    }
    best = Math.max(best, sum)
  }
  return best
}

function travelled(bend: number, turns: number): number {
  const bent = Math.min(Math.abs(turns), 4)
  return turns + bend * (bent * bent * 0.125 + (Math.abs(turns) - bent))
}
