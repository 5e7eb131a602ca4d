import { sentence } from '#core/messages/sentence'
import type { DeliveryImport } from './delivery-import.svelte'
import type { DeliveryFault, DeliveryField } from '#core/spend/delivery-types'

export const FIELD_WORDS: Readonly<Record<DeliveryField, string>> = {
  date: 'Day',
  product: 'Product',
  containers: 'Containers',
  size: 'Container size',
  reference: 'Delivery note',
}

/** What was read, cut short: it comes from a file and may be anything. */
const shown = (text: string): string => {
  const plain = text.replaceAll(/[\p{Cc}\p{Cf}]/gu, ' ').trim()
  return `“${plain.length > 40 ? `${plain.slice(0, 40)}…` : plain}”`
}

/** What is wrong with a row, and what to do. */
export function faultWords(fault: DeliveryFault): string {
  switch (fault.code) {
    case 'empty':
      return `${FIELD_WORDS[fault.field]} is empty.`
    case 'day-unreadable':
      return `${shown(fault.text)} is not a day. Write it as 2026-03-09 or 9.3.2026.`
    case 'day-in-future':
      return `${shown(fault.text)} has not come yet.`
    case 'day-order-unknown':
      return `${shown(fault.text)} can be read two ways. Say above whether the day or the month comes first.`
    case 'product-unknown':
      return `${shown(fault.text)} is not among the products. Use the name as it stands there, or add it.`
    case 'product-ambiguous':
      return `${shown(fault.text)} is the name of several products. Give them different names first.`
    case 'size-unknown':
      return `The container size of ${shown(fault.product)} is not known. Enter it at the product or in the list.`
    case 'number':
      return `${FIELD_WORDS[fault.field]}: ${sentence(fault.problem)}`
    case 'not-whole':
      return `${shown(fault.text)} is not a whole number of containers from 1 to 99999.`
    case 'cell-too-long':
      return `${FIELD_WORDS[fault.field]} has ${fault.length} characters; something is wrong with the file here.`
    case 'broken-quotes':
      return 'A quotation mark is not closed; everything after it may be wrong.'
  }
}

/** Why a file or a paste was not read at all, and what to do. */
export function refusedWords(refused: NonNullable<DeliveryImport['refused']>): string {
  switch (refused.kind) {
    case 'too-large':
      return `It has ${refused.megabytes} MB. Lists of deliveries are far smaller; choose another file, or split it.`
    case 'line-too-long':
      return `Row ${refused.line} is longer than a row of a list can be; something is wrong with the file there. Nothing was read.`
    case 'workbook':
      return 'This is a workbook. Save the sheet as a file of values (CSV) first, or copy its rows and paste them here.'
    case 'not-text':
      return 'This is not a file of text. Choose a file of values (CSV).'
    case 'empty':
      return 'There is nothing in it. Choose another file.'
  }
}
