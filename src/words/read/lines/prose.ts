/** What is done before and after the rows, and makes none. */
const notRows =
  /^\s*(?:cast|bind|co\b|bo\b|weave|join|cut|gather|sew|break|fasten|block|place|using|with)\b/i

/** "Gauge: ...", "Materials - ...", "Finished size: ...": what a line is about stands before a mark. */
const about =
  /^\s*(?:[-•–*]\s+)?(?:stitch\s+|row\s+|finished\s+|pattern\s+|designer'?s\s+)?(?:gauge|tension|materials?|yarns?|needles?|hooks?|looms?|notions|tools?|equipment|you will need|sizes?|measurements?|circumference|length|notes?|tips?|skill level|level|difficulty|designe[dr]|copyright|by|for)(?:\s+(?:used|needed|notes?|by))?\s*(?:[:=]|[-–—]\s)/i

/** "Gauge 20 sts to 10 cm", "20 sts and 28 rnds = 4 in" */
const measured =
  /^\s*(?:(?:gauge|tension)\b|(?:about\s+)?\d+(?:\.\d+)?\s*(?:sts?|stitches|pegs|loops|rows|rnds|rounds)\b[^\n]{0,40}?(?:=|\b(?:to|over|per)\b)\s*(?:an?\s+)?\d+(?:\.\d+)?\s*(?:cm|mm|in|inch|inches|")(?![a-z]))/i

/** Does a line without a head tell something else than rows? */
export const isProse = (words: string): boolean =>
  notRows.test(words) || about.test(words) || measured.test(words)
