/**
 * Short rows from knitting books, as stitches in the order they are worked. Every row ends with a
 * plain turn; a row starts where the last one ended. The rows' stitches are worked out by us from
 * the counts that the sources state.
 */
export interface ShortRows {
  readonly id: string
  readonly source: string
  readonly castOn: number
  /** Loops before the yarn at the start. */
  readonly startsAfter?: number
  readonly rows: readonly string[]
  /** Loops ahead of the turn that the row leaves unworked. */
  readonly unworked: readonly number[]
  /** All loops after each row; left out where the rows neither increase nor decrease. */
  readonly loops?: readonly number[]
}

const range = (first: number, last: number, step = 1): number[] =>
  Array.from({ length: (last - first) / step + 1 }, (_, index) => first + index * step)

export const shortRows: readonly ShortRows[] = [
  {
    id: 'heel of 28',
    source:
      'Cycling and Shooting Knickerbocker Stockings, H. P. Ryder, 1896, PG eBook 37456; stocking no. 1',
    castOn: 28,
    rows: [
      'sl1,k15,k2tog,k1',
      'sl1,p5,p2tog,p1',
      ...range(6, 13).map((n) => (n % 2 ? `sl1,p${n},p2tog,p1` : `sl1,k${n},k2tog,k1`)),
      'sl1,k14,k2tog',
      'sl1,p14,p2tog',
    ],
    unworked: [9, 9, 7, 7, 5, 5, 3, 3, 1, 1, 0, 0],
    loops: range(16, 27).reverse(),
  },
  {
    id: 'heel of 25',
    source: "The Lady's Knitting-Book, E. M. C., 2nd ed. 1874, PG eBook 62646; p.11",
    castOn: 25,
    rows: [
      'k12,k1,k4,k2tog,k1',
      'p11,p2tog,p1',
      'k12,k2tog,k1',
      'p13,p2tog,p1',
      'k14,k2tog,k1',
      'p15,p2tog,p1',
      'k16,k2tog',
      'p16,p2tog',
    ],
    unworked: [5, 5, 3, 3, 1, 1, 0, 0],
    loops: range(17, 24).reverse(),
  },
  {
    id: 'sleeve cap of 97',
    source:
      "Handbook of Wool Knitting and Crochet, Needlecraft Publishing, 1918, PG eBook 26113; ladies' sweater, sleeves",
    castOn: 97,
    // The group is worked three times more, four in all: only so are the turns symmetrical.
    rows: ['k40,(p2,k2)x4,p1', ...[23, 29, 35, 41, 47, 53, 59, 65, 71, 77].map((n) => `k${n}`)],
    unworked: [40, 34, 34, 28, 28, 22, 22, 16, 16, 10, 10],
  },
  {
    id: 'shoulder of 63',
    source:
      "Handbook of Wool Knitting and Crochet, Needlecraft Publishing, 1918, PG eBook 26113; ladies' sweater, back, rows 177-183",
    castOn: 63,
    rows: ['k56', 'p49', 'k43', 'p37', 'k31', 'p25', 'k4,k2tog,(k5,k2tog)x2,k*'],
    unworked: [7, 7, 13, 13, 19, 19, 0],
    loops: [63, 63, 63, 63, 63, 63, 60],
  },
  {
    id: 'knee-cap gore on 114',
    source: "Beeton's Book of Needlework, 1870, PG eBook 15147; no. 322",
    castOn: 114,
    startsAfter: 44,
    // From 26 on, one idle stitch more at the end of every row, 46 rows; then one less at each end.
    rows: [
      ...range(27, 72).map((n) => `k${n}`),
      ...range(28, 72, 2)
        .reverse()
        .map((n) => `ssk,k${n - 4},k2tog`),
    ],
    unworked: [
      ...range(21, 43)
        .reverse()
        .flatMap((n) => [n, n]),
      ...range(28, 72, 2).map(() => 21),
    ],
    loops: [...range(27, 72).map(() => 114), ...range(68, 112, 2).reverse()],
  },
]

/** Pieces shaped over whole rows; the counts are those the sources state. "k*": all the rest. */
export const shapings: readonly {
  readonly id: string
  readonly source: string
  readonly castOn: number
  readonly rows: readonly string[]
  readonly stated: readonly [afterRow: number, loops: number][]
}[] = [
  {
    id: "baby's stocking",
    source: 'My Knitting Book, Miss Lambert, London 1843, PG eBook 33502; p.100',
    castOn: 23,
    // Two rows to a turn: six times one more at each end, six times one more.
    rows: [
      ...Array.from({ length: 6 }, () => ['kfb,k*,kfb', 'k*']).flat(),
      ...Array.from({ length: 6 }, () => ['kfb,k*', 'k*']).flat(),
    ],
    stated: [[24, 41]],
  },
  {
    id: "baby's shoe",
    source: 'Exercises in Knitting, Cornelia Mee, London 1846, PG eBook 21032; p.79',
    castOn: 30,
    rows: [
      ...Array.from({ length: 8 }, () => 'kfb,k*'),
      ...Array.from({ length: 6 }, () => ['kfb,k*', 'k*']).flat(),
    ],
    stated: [
      [8, 38],
      [20, 44],
    ],
  },
  {
    id: 'toe of 60',
    source: "The Lady's Knitting-Book, E. M. C., 2nd ed. 1874, PG eBook 62646; p.12",
    castOn: 60,
    // 30 on one needle and 15 on each of two: four decreases in a round.
    rows: ['ssk,k26,k2tog,k13,k2tog,ssk,k*', 'ssk,k24,k2tog,k12,k2tog,ssk,k*'],
    stated: [
      [1, 56],
      [2, 52],
    ],
  },
]
