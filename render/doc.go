// Package render has no code of its own. The packages below it turn plans into what
// people read, on paper and on a screen. To print or show a plan, call New of one of
// the first three, or a function of report. They are independent of one another, except
// that all use the phrases of report and the bench sheet shows a small picture:
//
//   - [roundlay/render/wrap]: the paper that goes round a glass, true to size, the
//     page that tests a printer, and the charts of the motifs
//   - [roundlay/render/bench]: the sheet that goes to the wheel
//   - [roundlay/render/picture]: how the cut glass looks from the side
//   - [roundlay/render/report]: a plan as words and as JSON
//   - [roundlay/render/screen]: a plan as shapes for a screen, drawn anew after every
//     edit; call its NewFlat first
//
// They are built on these, the lowest first:
//
//   - [roundlay/render/drawing]: a picture as marks in layers
//   - [roundlay/render/lettering]: words, measured and broken into lines
//   - [roundlay/render/printing]: pages as files, in SVG, PDF and PNG
//   - [roundlay/render/page]: what every printed page has in common
//
// [roundlay/render/printtest] is for tests: it looks at finished files through other
// programs.
package render
