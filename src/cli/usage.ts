import { limits } from '../pattern/pattern'

export const usage = `Pegwright without a screen

  read [FILE] --pegs N     read words (standard input without FILE) into rows
  check FILE...            check pattern files
  check --words FILE --pegs N        check words
  check FILE --words FILE            check a pattern and compare the words with it
  write FILE               print the words of a pattern, from cast-on to bind-off; own words as they
                           stand, where a chart has any
  draw FILE --as rows|ring|side -o OUT.svg   draw a chart, or the whole piece from the side

For words:
  --pegs N                 loops on the loom before the first row, ${limits.pegs.least} to ${limits.pegs.most}
  --flat                   worked back and forth on a rake; otherwise in the round
  --direction clockwise|counterclockwise     of a round loom seen from above; clockwise
                           unless said
  --size K                 which size of "24 (28, 32)"; 1, the first, unless said
  --needles                with --flat: words for needles, every other row as its wrong side
                           looks
  --terms us|uk            terms of the words; write: written from the charts in these terms
  --from-charts            write: written from the charts, own words or not

For a piece of several charts:
  --chart NAME             write, draw, check --words: this one; else write prints the whole piece,
                           and draw and check --words take the first chart in the file
  check names the chart of each finding; with --json rows and findings have a "chart" then

  --json                   read, check: print one JSON object. Of each row: "before", the loops on
                           the loom; "takes" and "makes", of those that it works; "after",
                           before - takes + makes: loops that it doesn't work stay on.
                           "unusable" has the reasons why a file or the call could not be used
  -h, --help               print this

Exit: 0 no error found; 1 errors found; 2 the call or a file could not be used.
`
