/**
 * How many letters have to be put in, left out, replaced or changed over to make one word of the
 * other; more than `most` counts as `most` + 1.
 */
export function distance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1
  let twoBack: number[] = []
  let oneBack = Array.from({ length: b.length + 1 }, (_, index) => index)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    let least = i
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let cost = Math.min(
        (oneBack[j] ?? 0) + 1,
        (row[j - 1] ?? 0) + 1,
        (oneBack[j - 1] ?? 0) + (same ? 0 : 1),
      )
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        cost = Math.min(cost, (twoBack[j - 2] ?? 0) + 1)
      row.push(cost)
      least = Math.min(least, cost)
    }
    if (least > most) return most + 1
    twoBack = oneBack
    oneBack = row
  }
  return oneBack[b.length] ?? most + 1
}

/** Words that are looked for once; a text of nothing but unknown words asks for no more. */
const mostRemembered = 2000
const remembered = new Map<string, readonly string[]>()

/** The words of a list that are nearest to one that is not known: none if all are far off. */
export function nearest(word: string, list: readonly string[]): readonly string[] {
  let near = remembered.get(word)
  if (!near) {
    if (remembered.size >= mostRemembered) remembered.clear()
    remembered.set(word, (near = findNearest(word, list)))
  }
  return near
}

function findNearest(word: string, list: readonly string[]): readonly string[] {
  const most = word.length <= 2 ? 0 : word.length <= 4 ? 1 : 2
  if (most === 0 || word.length > 20) return []
  const near = list
    .map((known) => ({ known, by: distance(word.toLowerCase(), known.toLowerCase(), most) }))
    .filter(({ by }) => by > 0 && by <= most)
    .sort((a, b) => a.by - b.by)
  const least = near[0]?.by
  return near
    .filter(({ by }) => by === least)
    .map(({ known }) => known)
    .slice(0, 3)
}
