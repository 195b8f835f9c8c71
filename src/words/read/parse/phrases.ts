/**
 * Set phrases of the trade, as `Cursor.eat` takes them: words parted by spaces, `a|b` one of them,
 * `a?` perhaps left out, `#` a number. Of a list the first that stands in the text counts.
 */
const ends = 'rnd|rnds|round|row|rows|needle|loom|section|last'
const to = 'to|until|till'
const rem = 'rem|remain|remains|remaining|rems|left'
export const loopWords = 'st|sts|stitch|stitches|loop|loops|peg|pegs'
const units = 'cm|mm|in|inch|inches|"|ins'
export const rowWords = 'rnd|rnds|round|rounds|row|rows'

export const untilEnd: readonly string[] = [
  `${to} the? end of the? ${ends}`,
  `${to} the? end of the|this|these? sts|stitches|pegs`,
  `${to} the? end`,
  `for the? entire|whole ${ends}`,
  `all? the? way? around|round the? loom|${ends}`,
  'all? the? way? around',
  'all round',
  `across the? loom|${ends}`,
  'across all? the? sts|stitches|pegs',
  'across',
  `${to} the? ${ends} end`,
  'over all sts|stitches|pegs',
  'on|over all|every peg|pegs|sts|stitches',
]

export const untilLast: readonly string[] = [
  `${to} the? last # ${loopWords}`,
  `${to} the? last #`,
  `${to} within? # ${loopWords} of|from|before the? end of the? ${ends}`,
  `${to} within? # ${loopWords} of|from|before the? end`,
  `${to} within # of the? end of the? ${ends}`,
  `${to} within # of the? end`,
  `${to} only? # ${loopWords} ${rem}`,
  `${to} only? # ${rem}`,
  `${to} the? last st|stitch|loop|peg`,
]

export const untilMark: readonly string[] = [
  `${to} # ${loopWords} .? before the? next|last? marker|m|pm|gap|turn`,
  `${to} # before the? next? marker|m|gap`,
  `${to} the? next|last? marker|m|gap|turn`,
]

export const inRow: readonly string[] = ['in|of the? rnd|round|row']
export const endings: readonly string[] = ['end|ending|ends last? repeat|rep? with?']

/** Without a word of more or of all. */
export const bareTimes: readonly string[] = ['# times|time|x', 'x #']
export const inAll: readonly string[] = [
  'in all',
  'in total',
  'total',
  'altogether',
  'all together',
  'all told',
]

export const rights: readonly string[] = ['( rs )', 'rs :?', '( right side )']
export const wrongs: readonly string[] = ['( ws )', 'ws :?', '( wrong side )']

export const sameStitch: readonly string[] = [
  `in|into the? next|following? ${loopWords}`,
  'all? in|into the? same|one|1 st|stitch|peg',
]

export const theseStitches: readonly string[] = [
  'this|these sts|stitches|pegs|section',
  'this',
  'in brackets',
]

export const rowsLong: readonly string[] = [
  `for|work # more? ${rowWords}`,
  `for the? next # ${rowWords}`,
]

/** "until 20 rnds are worked", "until you have worked 20 rows": how many rows there are then. */
const worked = 'worked|done|completed|complete|finished|told'
export const untilRows: readonly string[] = [
  `until|till a? total? of? # ${rowWords} are|is|have|has? been? ${worked}`,
  `until|till you have worked? a? total? of? # ${rowWords} in? all|total?`,
  `until|till there are a? total? of? # ${rowWords} in? all|total?`,
]

/** "until Rnd 65 is worked", "through Rnd 65": the last row that there is then. */
export const throughRow: readonly string[] = [
  `until|till|through ${rowWords} # is|has? been? ${worked}?`,
]

/** Fabrics of one stitch. */
export const stockinette: readonly string[] = ['in? st st', 'in? stockinette|stocking st|stitch?']
export const reversed: readonly string[] = [
  'in? rev|reverse st st',
  'in? rev|reverse stockinette|stocking st|stitch?',
]

/** Fabrics whose rows change. */
export const garter: readonly string[] = ['in? garter|g stitch|st|sts', 'in garter']
export const seed: readonly string[] = ['in? seed stitch|st|sts', 'in? single moss stitch|st']
export const moss: readonly string[] = ['in? moss stitch|st|sts']
export const doubleMoss: readonly string[] = [
  'in? double|irish moss stitch|st',
  'in? double seed stitch|st',
]
export const rib: readonly string[] = ['rib|ribs|ribbing stitch|st|pattern?']
export const ribByNumbers: readonly string[] = ['in? a? # x|by|- # rib|ribbing stitch|st|pattern?']
/** "Work in k2, p2 rib": what stands behind tells what it is. */
export const inStitches: readonly string[] = ['in k|p|knit|purl|(|[']

/** Each loop as it looks; the side that is seen makes no difference to it. */
export const appearing: readonly string[] = [
  'knit|k the knits|knit|k sts|stitches|loops|pegs? ,? and|&? purl|p the? purls|purl|p sts|stitches|loops|pegs?',
  'purl|p the purls|purl|p sts|stitches|loops|pegs? ,? and|&? knit|k the? knits|knit|k sts|stitches|loops|pegs?',
  'work? all|the? sts|stitches|loops|pegs as they appear|look|present|come|face',
  'work? each|every st|stitch|loop|peg as it appears|looks|presents|comes|faces',
  'work? as they appear|look|present|come',
]
export const asEstablished: readonly string[] = ['work as est|established']

export const even: readonly string[] = [
  'work|knit|purl|cont|continue even|straight',
  'even|straight',
]

/** In a pattern, which is that of the rows before. */
export const asSet: readonly string[] = [
  'work? in patt|pattern|pat as? set|est|established?',
  'work? as set|est|established',
  'cont|continue as? set|est|established',
  'cont|continue? in rib|ribbing as? set|est|established?',
  'rib',
]

export const allPegs: readonly string[] = [
  'all|every|each|rem|remaining other? sts|stitches|peg|pegs',
  'all',
  'the? rest',
]

export const inFront: readonly string[] = [
  'pwise|purlwise wyif|yif',
  'wyif|yif',
  'with yarn in front',
]
export const atBack: readonly string[] = [
  'pwise|purlwise wyib',
  'wyib',
  'with yarn in|at back',
  'pwise|purlwise',
]

/** Said beside a number of rows, which is what counts. */
export const aboutLength: readonly string[] = [
  `( about|approx|approximately? # . # ${units} )`,
  `( about|approx|approximately? # ${units} )`,
]

/** The doubled stitch of a German turn, told as a step of its own. */
export const makesDoubled: readonly string[] = [
  'make|work|create? a|the? ds|double stitch? on|at peg #',
  'make|create a|the? ds|double stitch?',
]
/** How doubled stitches are worked, which is nothing to chart. */
export const doubledNotes: readonly string[] = [
  'working|knitting|purling|treating|counting the|each|every|all|any? ds|dss|double stitch|stitches? as one|1|a single? st|stitch|loop?',
]
export const asOne: readonly string[] = ['as one|1|a single? st|stitch|loop?']

export const germanTurns: readonly string[] = [
  'turn and|,? make|work a? ds|double stitch? on|at peg #',
  'turn ,|.|;? ds|double stitch? on|at peg #',
  'german turn on|at peg #',
  'german turn',
  'turn ,|.|; ds',
  'turn and? make|work ds',
  'turn ds',
  'turn and|,? make|work a? ds|double stitch?',
  'german short row turn',
]

export const wrapTurns: readonly string[] = [
  'wrap the? next? st|stitch|peg and|, turn',
  'wrap the? peg # and|, turn',
  'wrap and|& turn peg? #',
  'wrap and|& turn',
  'w &|and t peg? #',
  'wt peg #',
  'w &|and t',
  'wt',
  'wrap peg #',
  'wrap next peg|st|stitch',
]

export const plainTurns: readonly string[] = ['turn the? work?']

const rest = 'these|those|the|rem|remaining? rem|remaining?'
export const afterTurn: readonly string[] = [`,|.? leaving|leave ${rest} ${loopWords} unworked?`]

export const pegRanges: readonly string[] = [
  'from? peg|pegs # to|through|- peg? #',
  'from # to|through|- peg? #',
]
export const singlePegs: readonly string[] = ['on? peg|pegs #']
/** Behind a stitch, or more of them. */
export const barePegs: readonly string[] = ['# -|to|through #', '#']
export const goingBack: readonly string[] = [',? going back']
export const morePegs: readonly string[] = [', and|& #', ',|and|& #']

export const lengths: readonly string[] = [
  `# #? /? #? ${units}`,
  `# . # ${units}`,
  `# ½|¼|¾ ${units}`,
]
export const lengthStarts: readonly string[] = [
  'for about|approx?',
  'until you have about?',
  'until the? piece|work|it|cuff|rib|section|hat|sock measures about?',
  'to',
]
export const someLength: readonly string[] = ['until|to the? desired|required length']
export const lengthEnds: readonly string[] = ['from the? beginning|beg|cast-on|start', 'long']

/** A wrap is lifted with its stitch whatever is worked there: these say how, up to the pause. */
export const wrapNotes: readonly string[] = [
  'work|working|knitting|purling|lift|lifting|hide|hiding|pick|picking up? the|all|any|each? wrap|wraps',
  'together|tog with its|the|their|any wrap|wraps',
  'knit|lift off',
]
/** "Knit the wrap together with the stitch" works that stitch; of several it is a note. */
export const wrapsWorked: readonly string[] = ['knit|purl the|all|any|each? wrap|wraps']

/** The side that a repeat of rows ends with is said by their number. */
export const lastRows: readonly string[] = [
  'ending|end with|after|on a? ws|rs|wrong|right side? row|rnd|round',
  'ending|end with|after|on a? # row|rnd|round',
]

/** Words that say nothing a chart would show. */
export const fillers: readonly string[] = [
  'then',
  'and',
  'next',
  'the',
  'work',
  'pm',
  'sm',
  'slm',
  'place|slip|remove marker|m',
  'bor',
  'join the? yarn?',
  'with colour|color? mc|cc|a|b|c|d',
  'wyib|ybk|yb',
  'at the? same time',
  'rs|ws facing',
  'ko all?',
]
