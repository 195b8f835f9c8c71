import '@testing-library/jest-dom/vitest'
import { loadReader } from '../../src/bench/words/reader.svelte'

// What comes a moment after the first picture is there in every test.
await loadReader()
