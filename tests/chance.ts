/**
 * The same cases at each run, so that a red test is a change of ours and not a throw of the dice.
 * `PEGWRIGHT_SEED=7 npm test -- unit` asks for others.
 */
import fc from 'fast-check'

fc.configureGlobal({
  ...fc.readConfigureGlobal(),
  seed: Number(process.env['PEGWRIGHT_SEED'] ?? 1),
})
