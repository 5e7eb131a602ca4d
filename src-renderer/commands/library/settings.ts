import type { Settings } from '#core/records/index'

export const changeSettings = (settings: Settings, facts: Partial<Settings>): Settings => ({
  ...settings,
  ...facts,
})

export const changeProtocol = (settings: Settings, facts: Partial<Settings['protocol']>): Settings => ({
  ...settings,
  protocol: { ...settings.protocol, ...facts },
})

/** Replaces the shipped wording of a caution; an empty text brings the shipped one back. */
export function setCautionText(settings: Settings, caution: string, text: string): Settings {
  const others = settings.cautionTexts.filter((row) => row.caution !== caution)
  return { ...settings, cautionTexts: text.trim() === '' ? others : [...others, { caution, text }] }
}

/** Replaces a limit of the shipped code table with a local one; null brings the shipped one back. */
export function setCodeLimit(
  settings: Settings,
  limit: string,
  local: { readonly value: string; readonly source: string } | null,
): Settings {
  const others = settings.codeLimits.filter((row) => row.limit !== limit)
  return { ...settings, codeLimits: local === null ? others : [...others, { limit, ...local }] }
}
