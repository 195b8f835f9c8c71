/** fast-check with at most so many cases to a property. */
import * as whole from '../node_modules/fast-check/lib/fast-check.js'

const most = 20

const assert: typeof whole.assert = ((property: never, parameters?: { numRuns?: number }) =>
  whole.assert(property, {
    ...parameters,
    numRuns: Math.min(parameters?.numRuns ?? 100, most),
    seed: 1,
  })) as never

export * from '../node_modules/fast-check/lib/fast-check.js'
export { assert }
export default { ...whole, assert }
