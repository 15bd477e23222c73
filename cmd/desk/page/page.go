// Package page holds the page that a browser shows: its frame, its look and
// its script. There is no build step: what is here is what is served.
//
// # Its modules
//
// The script is plain modules, and page_test.go checks that what one imports another exports. The page has no geometry and
// formats no length: it sends what was typed or dragged, and shows the answer.
//
//   - ask.js alone talks to the engine. lay goes at once; of slow questions two are out
//     at a time, the newest first.
//   - engine.js is the engine within the page, where the document names one
//     (data-engine): a worker for what is asked at every key, up to two for slow
//     questions. A worker that computes hears nothing, so a slow one that is given up is
//     ended.
//   - store.js alone holds state. Parts are functions mount(root, store, about) that
//     follow it. There is one question to lay at a time, always about the newest text, so
//     that typing and dragging never wait.
//   - history.js is undo. A moment is a text, or edits of the moment before it while the
//     engine hasn't answered. So any mixture of edits, undo and redo ends in the same
//     text, however fast it came.
//   - slow.js follows a slow question: it is put when the text comes to rest, and its
//     answer is gone at the next change.
//   - Fields are made from describe and the form of lay, one control for each sort of key
//     (controls.js). A key that is added to a table in Go appears by itself; a sort that
//     isn't known there is a box to type in. forms.js says only which table stands under
//     which heading.
//   - swell.js and rock.js are small drawings with handles (grasp.js). Their curves and
//     sections are the engine's (hands in the answer to lay, render/screen/hand.go); the
//     page only says which share or angle a handle was moved to.
//   - faces.js turns to the base and back: side of lay is then base, and the answer's
//     face says what is drawn. A motif or a finding that is chosen brings its face.
//   - wrap.js, glass.js and profile.js are the drawings one works on. They send a drag as
//     it was made (drag.js: from where to where, of the text with which it began), and
//     the engine says what that is in the job. sheet.js draws a period once and repeats
//     it; a browser fills very long paths slowly, so they are drawn by fifties, there and
//     on the glass (vessel.js).
//   - visit.js tells the server when the page comes and goes: one that was opened by a double
//     click ends with it.
//   - bring.js takes what is dropped: a job, a drawing, or what the job names and can't
//     find. beside.js keeps the last two while they aren't on disk yet: ask.js sends them
//     with every question about a job that names them, savebeside.js puts them beside the
//     job when that is saved. pen.js is drawing by hand.
//   - disk.js is the job's file. Of two versions the one not kept is one undo away.
//   - sheets.js keeps the pages ready to print, in mm, each with an @page of its own
//     size.
//
// data-job on the document is asking, laid, mistaken or silent; a field has data-path, a
// motif data-motif, a finding data-letter. Tests go by these.
package page

import "embed"

// Files are the page's files, index.html first among them.
//
//go:embed index.html *.css *.js
var Files embed.FS
