/**
 * Tokens of abbreviation lists with the other spellings seen there, what they take and
 * make, and our stitch. Spellings that the lists use for several stitches are left out: "make 1",
 * "yfwd" and "inc" (yarn over, lifted or bar increase), "k1b" (row below or through the back),
 * "seam", "slip and bind" and the like, which are sentences of old books.
 */
export interface Abbreviation {
  readonly token: string
  readonly seen: readonly string[]
  readonly takes: number
  readonly makes: number
  /** Id of the stitch; null: no stitch of a chart, or one that Pegwright does not have. */
  readonly stitch: string | null
  readonly source: string
}

const seen = (
  token: string,
  stitch: string | null,
  takes: number,
  makes: number,
  ...spellings: string[]
): Abbreviation => ({
  token,
  stitch,
  takes,
  makes,
  seen: [token, ...spellings],
  // In many lists; none was noted.
  source: 'common practice',
})

export const abbreviations: readonly Abbreviation[] = [
  seen('k', 'k', 1, 1, 'K', 'knit', 'plain'),
  seen('ew', 'ew', 1, 1, 'EW', 'e-wrap', 'ks', 'ktbl', 'K1tbl', 'kbl'),
  seen('p', 'p', 1, 1, 'P', 'purl', 'pearl'),
  seen('ptbl', 'ptbl', 1, 1, 'P1tbl'),
  seen('yo', 'yo', 0, 1, 'YO', 'yon', 'yrn', 'yfrn', 'over'),
  seen('k2tog', 'k2tog', 2, 1, 'K2TOG'),
  seen('ssk', 'ssk', 2, 1, 'k2tog tbl', 'skp', 'SKP', 'skpo', 'sl1 k1 psso'),
  seen('p2tog', 'p2tog', 2, 1),
  seen('ssp', 'ssp', 2, 1, 'p2tog tbl', 'P2togtbl'),
  seen('k3tog', 'k3tog', 3, 1, 'K3TOG'),
  seen('sk2p', 'sk2p', 3, 1, 'SK2P', 'sl1 k2tog psso', 'sk2po'),
  seen('s2kp', 'cdd', 3, 1, 'S2KP', 'S2KP2', 'CDD', 'sl2 k1 p2sso'),
  seen('kfb', 'kfb', 1, 2, 'KFB', 'K1F&B', 'k1fb', 'Inc1'),
  seen('m1', 'm1l', 0, 1, 'M1', 'M1L'),
  seen('M1R', 'm1r', 0, 1),
  seen('sl', 'sl', 1, 1, 'sl1', 'Sl1P', 'slip'),
  seen('sl wyif', 'slf', 1, 1),
  seen('mb', 'mb', 1, 1, 'MB', 'bobble'),
  seen('2/2 RC', '2/2 RC', 4, 4, 'C4B'),
  seen('2/2 LC', '2/2 LC', 4, 4, 'C4F'),
  seen('3/3 RC', '3/3 RC', 6, 6, 'C6B'),
  seen('3/3 LC', '3/3 LC', 6, 6, 'C6F'),
  seen('1/1 RC', '1/1 RC', 2, 2, 'C2B'),
  seen('1/1 LC', '1/1 LC', 2, 2, 'C2F'),
  seen('2/1 RPC', '2/1 RPC', 3, 3, 'T3B'),
  seen('2/1 LPC', '2/1 LPC', 3, 3, 'T3F'),
  seen('w&t', null, 0, 0),
  seen('BO', null, 1, 0),
  seen('CO', null, 0, 1),
  seen('k1b', null, 1, 1),
]
