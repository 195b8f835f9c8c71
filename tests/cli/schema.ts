import * as v from 'valibot'

const count = v.pipe(v.number(), v.integer(), v.minValue(0))

const row = {
  label: v.string(),
  before: count,
  takes: count,
  makes: count,
  after: v.pipe(v.number(), v.integer()),
  stitches: v.array(v.pipe(v.string(), v.minLength(1))),
}

const finding = {
  rule: v.pipe(v.string(), v.minLength(1)),
  severity: v.picklist(['error', 'warning', 'hint']),
  row: v.nullable(v.string()),
  pegs: v.nullable(
    v.pipe(
      v.strictTuple([v.number(), v.number()]),
      v.check(([a, b]) => a >= 1 && b >= a),
    ),
  ),
  message: v.pipe(v.string(), v.minLength(1)),
  advice: v.string(),
}

/** The JSON of read and check for one file: these keys and no other. */
export const oneFile = v.strictObject({
  rows: v.array(v.strictObject(row)),
  findings: v.array(v.strictObject(finding)),
})

/** Of several files: each row and finding names its file. */
export const severalFiles = v.strictObject({
  rows: v.array(v.strictObject({ ...row, file: v.string() })),
  findings: v.array(v.strictObject({ ...finding, file: v.string() })),
})

/** Of one file with several charts: each row names its chart, each finding its own or none. */
export const severalSections = v.strictObject({
  rows: v.array(v.strictObject({ ...row, chart: v.string() })),
  findings: v.array(v.strictObject({ ...finding, chart: v.nullable(v.string()) })),
})

export const parsed = (out: string): v.InferOutput<typeof oneFile> =>
  v.parse(oneFile, JSON.parse(out))
