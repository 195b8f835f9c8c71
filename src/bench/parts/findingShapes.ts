import type { Severity } from '../../checks/finding'

/** The mark of a finding on a field of 16 by 16. Shape carries the meaning, colour is an extra. */
export const findingShapes: Readonly<Record<Severity, string>> = {
  error: 'M2 2 L14 14 M14 2 L2 14',
  warning: 'M8 2 L15 14 H1 Z M8 6.5 V10 M8 11.8 V12.2',
  hint: 'M8 3.5 A4.5 4.5 0 1 1 7.99 3.5 Z',
}
