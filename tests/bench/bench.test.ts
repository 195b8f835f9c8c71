import { render, screen } from '@testing-library/svelte'
import { expect, test } from 'vitest'
import Bench from '../../src/bench/Bench.svelte'

test('the bench says its name', () => {
  render(Bench)
  expect(screen.getByRole('heading', { name: 'Pegwright' })).toBeInTheDocument()
})
