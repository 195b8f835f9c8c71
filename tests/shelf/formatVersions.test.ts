import { expect, test } from 'vitest'
import { forms, upgrade, version, type Form } from '../../src/shelf/formatVersions'

test('versions are numbered from 1 without a gap, and the last one is written', () => {
  expect(forms.map((form) => form.version)).toEqual(forms.map((_, index) => index + 1))
  expect(forms.at(-1)?.version).toBe(version)
})

test('an older file goes through every later step, in order', () => {
  const say = (word: string) => (file: object) => ({
    ...file,
    steps: [...((file as { steps?: string[] }).steps ?? []), word],
  })
  const known: Form[] = [
    { version: 1, upgrade: say('1 to 2') },
    { version: 2, upgrade: say('2 to 3') },
    { version: 3, upgrade: (file) => file },
  ]
  expect(upgrade({ pegwright: 1 }, known)).toEqual({
    ok: true,
    value: { pegwright: 3, steps: ['1 to 2', '2 to 3'] },
  })
  expect(upgrade({ pegwright: 2 }, known)).toEqual({
    ok: true,
    value: { pegwright: 3, steps: ['2 to 3'] },
  })
  expect(upgrade({ pegwright: 3 }, known)).toEqual({ ok: true, value: { pegwright: 3 } })
})
