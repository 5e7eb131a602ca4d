import { describe, expect, it } from 'vitest'
import { undoKey } from '#renderer/state/undo-keys.ts'

const press = (keys: string, typing = false) => {
  const parts = keys.split('+')
  return undoKey({
    key: parts.at(-1) ?? '',
    ctrlKey: parts.includes('Ctrl'),
    metaKey: parts.includes('Cmd'),
    shiftKey: parts.includes('Shift'),
    altKey: parts.includes('Alt'),
    typing,
  })
}

describe('undo keys', () => {
  it.each([
    ['Ctrl+z', 'undo'],
    ['Cmd+z', 'undo'],
    ['Ctrl+Shift+Z', 'redo'],
    ['Cmd+Shift+Z', 'redo'],
    ['Ctrl+y', 'redo'],
    ['z', null],
    ['Ctrl+Alt+z', null],
    ['Ctrl+x', null],
  ])('%s means %s', (keys, meaning) => {
    expect(press(keys)).toBe(meaning)
  })

  it('belong to the text while somebody types in it', () => {
    expect(press('Ctrl+z', true)).toBeNull()
    expect(press('Ctrl+y', true)).toBeNull()
  })
})
