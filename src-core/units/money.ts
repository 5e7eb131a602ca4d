import { Decimal } from './decimal'

/**
 * Currencies whose minor unit is not a hundredth. Source: ISO 4217 list one, column "minor unit", from memory; every
 * code not named has two digits.
 */
const MINOR_DIGITS: Readonly<Record<string, number>> = {
  BIF: 0,
  CLP: 0,
  DJF: 0,
  GNF: 0,
  ISK: 0,
  JPY: 0,
  KMF: 0,
  KRW: 0,
  PYG: 0,
  RWF: 0,
  UGX: 0,
  VND: 0,
  VUV: 0,
  XAF: 0,
  XOF: 0,
  XPF: 0,
  BHD: 3,
  IQD: 3,
  JOD: 3,
  KWD: 3,
  LYD: 3,
  OMR: 3,
  TND: 3,
}

/** Digits after the decimal sign in which a currency is paid. */
export const minorDigits = (currency: string): number => MINOR_DIGITS[currency] ?? 2

/** Rounds an amount half-up to the minor unit of its currency: one printed line. A total is the sum of such lines. */
export const roundMoney = (amount: Decimal, currency: string): Decimal =>
  amount.toDecimalPlaces(minorDigits(currency), Decimal.ROUND_HALF_UP)
