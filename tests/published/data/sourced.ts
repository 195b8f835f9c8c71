/** Values with the source that they can be looked up in; or "common practice", or "from memory". */
export interface Sourced<T> {
  readonly source: string
  readonly values: T
}
