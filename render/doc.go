// Package render holds nothing itself: the packages below it turn plans into what
// people read, on paper and on a screen. Each of these makes one thing, and they
// know nothing of one another, but that the bench sheet shows a small picture:
//
//   - [roundlay/render/wrap]: the paper that goes round a glass, true to size, the
//     page that tries a printer, and the charts of the motifs
//   - [roundlay/render/bench]: the sheet that goes to the wheel
//   - [roundlay/render/picture]: how the cut glass looks from the side
//   - [roundlay/render/report]: a plan as words and as JSON
//
// They stand on these, the lowest first:
//
//   - [roundlay/render/drawing]: a picture as marks in layers
//   - [roundlay/render/lettering]: words, measured and broken into lines
//   - [roundlay/render/printing]: pages as files, in SVG, PDF and PNG
//   - [roundlay/render/page]: what every printed page has in common
package render
