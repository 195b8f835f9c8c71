// Small reference libraries that carry no types of their own.

declare module 'invert-permutation' {
  /** Writes the inverse of a permutation of 0..n-1 to `result`, or to a new array. */
  export default function invertPermutation(permutation: number[], result?: number[]): number[]
}

declare module 'permutation-parity' {
  /** 1 for an even permutation of 0..n-1, -1 for an odd one, 0 for no permutation. */
  export default function permutationParity(permutation: number[]): -1 | 0 | 1
}
