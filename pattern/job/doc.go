// Package job is the job as its owner wrote it: the blanks, the limits, the rack of
// wheels, the layout and the motifs.
//
// Lengths are millimetres and angles radians, whatever the file was written in.
// Only Job.Length remembers the unit its owner reads.
//
// What to call first: [Read] turns a job file into a [Job], or returns an [*Error]
// with the line, the key, what was read and what would be accepted. [Demo] and
// [Starter] are files to read. [Job.Refuse] makes such an Error for what shows to be
// wrong only later, when the job is laid out.
//
// A job is changed in two ways. [Job.With] returns a copy with values changed, to be
// laid out and compared. [Rewrite] and [Revise] change the text of a job file, and
// keep comments, order and spaces as they are: Rewrite sets values with a note above
// each, Revise makes what someone asks for in a form, and what follows from it.
//
// [Tables] describes every key there is. [NewForm] is the text of a job as fields.
package job
