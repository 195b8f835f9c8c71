/**
 * Yarn weight classes: stitches to 100 mm (4 in) in plain knit. After the Craft Yarn Council's
 * Standard Yarn Weight System; guidelines only, the swatch decides.
 */
export interface YarnClass {
  readonly number: number
  readonly name: string
  readonly stitches: { readonly least: number; readonly most: number }
}

const yarn = (number: number, name: string, least: number, most: number): YarnClass => ({
  number,
  name,
  stitches: { least, most },
})

export const yarnClasses: readonly YarnClass[] = [
  yarn(0, 'lace', 33, 40),
  yarn(1, 'super fine', 27, 32),
  yarn(2, 'fine', 23, 26),
  yarn(3, 'light', 21, 24),
  yarn(4, 'medium', 16, 20),
  yarn(5, 'bulky', 12, 15),
  yarn(6, 'super bulky', 7, 11),
  yarn(7, 'jumbo', 1, 6),
]

/** The classes whose range holds this gauge, thickest last; the ranges of 2 and 3 overlap. */
export const yarnClassesFor = (stitchesTo100mm: number): readonly YarnClass[] => {
  const stitches = Math.round(stitchesTo100mm)
  return yarnClasses.filter(
    ({ stitches: { least, most } }) => least <= stitches && stitches <= most,
  )
}
