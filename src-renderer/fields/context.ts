import { getContext, setContext } from 'svelte'
import type { DecimalSign } from '#core/units/parse'

const KEY = Symbol('fields')

interface FieldContext {
  readonly decimalSign: () => DecimalSign
}

/** Set once by the shell: how numbers are written in this installation. */
export const provideFields = (context: FieldContext): void => {
  setContext(KEY, context)
}

export const fieldContext = (): FieldContext =>
  getContext<FieldContext | undefined>(KEY) ?? { decimalSign: () => 'point' }
