import { describe, expect, it } from 'vitest'
import { parseNumber } from '#core/units/parse'
import { FieldText } from '#renderer/fields/field-text.svelte.ts'

/** A box over a record that holds one number. */
function box(start: string | null) {
  const record = { value: start }
  const commits: (string | null)[] = []
  const field = new FieldText<string>({
    value: () => record.value,
    parse: (text) => parseNumber(text, { field: 'end', decimalSign: 'point' }),
    show: (value) => value,
    same: (a, b) => a === b,
    commit: (value) => {
      record.value = value
      commits.push(value)
    },
  })
  const type = (text: string): void => {
    for (let length = 1; length <= text.length; length += 1) field.input(text.slice(0, length))
  }
  return { field, record, commits, type }
}

describe('a box for a number', () => {
  it('never rewrites the text while it is typed', () => {
    const { field, record } = box(null)
    field.focus()
    for (const [text, value] of [
      ['0', '0'],
      ['0.', '0'],
      ['0.5', '0.5'],
      ['0.50', '0.50'],
    ] as const) {
      field.input(text)
      expect(field.text).toBe(text)
      expect(record.value).toBe(value)
      expect(field.problem).toBeNull()
    }
    field.blur()
    expect(field.text).toBe('0.50')
  })

  it('shows the plain form after leaving', () => {
    const { field, type } = box(null)
    field.focus()
    type('01,25')
    field.blur()
    expect(field.text).toBe('1.25')
  })

  it('keeps a text it cannot read, says so, and holds no number meanwhile', () => {
    const { field, record, type } = box('29.5')
    field.focus()
    type('29.5x')
    field.blur()
    expect(field.text).toBe('29.5x')
    expect(record.value).toBeNull()
    expect(field.problem?.code).toBe('number-unreadable')
  })

  it('does not complain about a beginning that may yet become a number', () => {
    const { field } = box(null)
    field.focus()
    for (const start of ['', '.', '-', '-.', ' ']) {
      field.input(start)
      expect(field.problem).toBeNull()
    }
    field.input('.')
    field.blur()
    expect(field.problem?.code).toBe('number-unreadable')
  })

  it('asks which number was meant, and takes the answer', () => {
    const { field, record, type } = box(null)
    field.focus()
    type('1,234')
    expect(record.value).toBeNull()
    expect(field.problem).toMatchObject({ code: 'number-ambiguous', readings: ['1.234', '1234'] })
    field.choose('1.234')
    expect(record.value).toBe('1.234')
    expect(field.text).toBe('1.234')
    expect(field.problem).toBeNull()
  })

  it('goes back with Esc to what stood there when the person came', () => {
    const { field, record, type } = box('29.50')
    field.focus()
    type('3')
    expect(record.value).toBe('3')
    field.revert()
    expect(record.value).toBe('29.50')
    expect(field.text).toBe('29.50')
  })

  it('holds nothing when it is emptied', () => {
    const { field, record } = box('29.5')
    field.focus()
    field.input('')
    field.blur()
    expect(record.value).toBeNull()
    expect(field.problem).toBeNull()
  })

  it('puts nothing into the record when it is only visited', () => {
    const { field, commits } = box('29.50')
    field.focus()
    field.blur()
    expect(commits).toEqual([])
  })

  it('follows an undo from elsewhere, also over a text it could not read', () => {
    const { field, record, type } = box('29.5')
    field.focus()
    type('abc')
    field.blur()
    record.value = '29.5'
    field.follow('29.5')
    expect(field.text).toBe('29.5')
    expect(field.problem).toBeNull()
  })

  it('keeps undo for the text only while it differs from what stood there', () => {
    const { field } = box('1')
    field.focus()
    expect(field.typed).toBe(false)
    field.input('12')
    expect(field.typed).toBe(true)
    field.input('1')
    expect(field.typed).toBe(false)
    field.input('12')
    field.blur()
    expect(field.typed).toBe(false)
  })
})
