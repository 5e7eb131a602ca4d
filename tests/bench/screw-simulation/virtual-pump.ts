import { chance, type Chance } from './chance'

export type Condition = 'sound' | 'dead' | 'slipping' | 'worn' | 'air'

/**
 * A pump with a truth nobody sees. Distributions as the bench was commissioned: target log-uniform 5 to 120 mL/min;
 * as-found = target x lognormal(sd 0.3); gain per turn = target x log-uniform(0.15 to 0.8), changing by up to 30 %
 * over four turns and no further; play uniform 0 to 1/4 turn; repeatability 0.5 to 3 %; a shared cylinder error with
 * standard deviation 0.5 %.
 *
 * Left open there and settled here (the worn tube and the end of the bending after a first look): half of the screws were last set clockwise and start without
 * play, half anticlockwise and start with all of it. A dead screw moves nothing, a slipping one at most a tenth of its
 * gain. A worn tube gives 40 to 75 % of the target, answers with a fifth to a half of its gain, never gives more than
 * 70 to 88 % of the target, and repeats to 3 to 7 %. Air takes 15 to 50 % off the first run, and 0.55 times as much off
 * each later one, until the line is primed.
 */
export class VirtualPump {
  readonly target: number
  readonly chance: Chance
  private level: number
  private gain: number
  private readonly bend: number
  private readonly play: number
  private readonly repeatability: number
  private readonly cylinder: number
  private ceiling = Infinity
  private air = 0
  /** turns of the head, and of what the head drives; equal up to the play */
  private head = 0
  private driven: number
  private readonly origin: number

  constructor(
    seed: number,
    public condition: Condition,
  ) {
    const c = chance(seed)
    this.chance = c
    this.target = c.logUniform(5, 120)
    this.level = this.target * Math.exp(0.3 * c.normal())
    this.gain = this.target * c.logUniform(0.15, 0.8)
    this.bend = c.uniform(-0.3, 0.3)
    this.play = c.uniform(0, 0.25)
    this.repeatability = c.uniform(0.005, 0.03)
    this.cylinder = 1 + 0.005 * c.normal()
    this.driven = c.uniform(0, 1) < 0.5 ? this.head : this.head - this.play
    this.origin = this.driven
    if (condition === 'dead') this.gain = 0
    if (condition === 'slipping') this.gain *= c.uniform(0, 0.1)
    if (condition === 'air') this.air = c.uniform(0.15, 0.5)
    if (condition === 'worn') {
      this.level = this.target * c.uniform(0.4, 0.75)
      this.gain *= c.uniform(0.2, 0.5)
      this.ceiling = this.target * c.uniform(0.7, 0.88)
      this.repeatability = c.uniform(0.03, 0.07)
    }
  }

  /** True flow, mL/min. */
  flow(): number {
    const s = this.driven - this.origin
    const bent = Math.min(Math.abs(s), 4)
    const travelled = s + this.bend * (bent * bent * 0.125 + (Math.abs(s) - bent))
    return Math.min(this.ceiling, Math.max(0, this.level + this.gain * travelled))
  }

  /** Turns the head; what it drives follows once the play is used up. */
  turn(turns: number): void {
    this.head += turns
    this.driven = Math.min(this.head, Math.max(this.head - this.play, this.driven))
  }

  prime(): void {
    this.air = 0
  }

  /** What one run of 60 s shows, mL/min. */
  run(): number {
    const flow = this.flow() * (1 - this.air)
    this.air *= 0.55
    return Math.max(0, flow * (1 + this.repeatability * this.chance.normal()) * this.cylinder)
  }

  /** Between two visits the flow goes elsewhere with the screw untouched: as-found anew, target x lognormal(spread). */
  driftAnew(spread: number): void {
    this.level += this.target * Math.exp(spread * this.chance.normal()) - this.flow()
  }

  /** The tube wears badly: 40 to 75 % of the flow is left, and no turn brings it back. */
  wearOut(): void {
    this.condition = 'worn'
    const before = this.flow()
    const left = this.chance.uniform(0.4, 0.75)
    this.ceiling = before * Math.min(0.88, left + 0.1)
    this.level -= before * (1 - left)
    this.gain *= 0.3
  }
}
