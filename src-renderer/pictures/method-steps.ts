import type { TestMethod } from '#core/records/index'

/** What the numbers in the method's picture stand for. */
export const METHOD_STEPS: Record<TestMethod, readonly string[]> = {
  'draw-down': [
    'Pick-up tube in a clean cylinder of this product, clear of the bottom.',
    'Eye level with the liquid: read the bottom of the curve, before and after.',
    'The pump delivers where it always does. Run it by its own prime control.',
  ],
  catch: [
    'Delivery tube off its injection point, into a dry cylinder. Touch off the last drop.',
    'Eye level with the liquid: read the bottom of the curve.',
    'The pick-up tube stays in its own container.',
  ],
  weighed: [
    'Container on the scale; read before and after the run.',
    'The tube hangs free: it must not rest on the container.',
    'The pump delivers where it always does.',
  ],
}

export const METHOD_NAMES: Record<TestMethod, string> = {
  'draw-down': 'Draw down',
  catch: 'Catch',
  weighed: 'Weigh',
}
