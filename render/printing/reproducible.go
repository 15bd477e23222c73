package printing

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"sync"

	"golang.org/x/sync/errgroup"
)

// reproducible rewrites a PDF file as canvas writes it, object by object: the catalog
// gets further entries, the title takes the place of the date, and the fonts'
// time stamps go, so that the same pages make the same bytes. Streams are
// compressed. (A title given to canvas loses a č: it writes the letter's 0D as it
// is, which readers take for the end of a line.)
func reproducible(file, catalog []byte, title string) ([]byte, error) {
	objects, err := split(file)
	if err != nil {
		return nil, err
	}
	// Compressing takes most of the time: it is shared out, an object at a time.
	bodies := make([][]byte, len(objects))
	var shares errgroup.Group
	shares.SetLimit(runtime.GOMAXPROCS(0))
	for i, o := range objects {
		shares.Go(func() (err error) {
			if bodies[i], err = settled(o.body, catalog, title); err != nil {
				err = fmt.Errorf("PDF object %d: %w", o.number, err)
			}
			return err
		})
	}
	if err := shares.Wait(); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	out.Write(file[:objects[0].at]) // the header
	offsets := make([]int, len(objects)+1)
	for i, o := range objects {
		offsets[o.number] = out.Len()
		fmt.Fprintf(&out, "%d 0 obj\n", o.number)
		out.Write(bodies[i])
		out.WriteString("\nendobj\n")
	}
	start := out.Len()
	fmt.Fprintf(&out, "xref\n0 %d\n0000000000 65535 f \n", len(offsets))
	for _, at := range offsets[1:] {
		fmt.Fprintf(&out, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(&out, "trailer\n<</Info 2 0 R/Root 1 0 R/Size %d>>\nstartxref\n%d\n%%%%EOF\n", len(offsets), start)
	return out.Bytes(), nil
}

// object is one object of a file: where it starts, and what stands between
// "obj" and "endobj".
type object struct {
	number, at int
	body       []byte
}

// errLayout is returned when canvas writes PDF files in another way than the
// version this was written for.
var errLayout = errors.New("canvas's PDF is laid out in a way this version of roundlay does not know")

// split finds a file's objects in the order they stand in it: each starts with
// its number and, if it holds a stream, says how long that is.
func split(file []byte) ([]object, error) {
	header := regexp.MustCompile(`^(\d+) 0 obj\n`)
	length := regexp.MustCompile(`^<<[^\n]*?/Length (\d+)[^\n]*>>stream\n`)
	// The header is two lines: the version, and four bytes that say it is binary.
	at := bytes.IndexByte(file, '\n') + 1
	at += bytes.IndexByte(file[at:], '\n') + 1
	var objects []object
	for !bytes.HasPrefix(file[at:], []byte("xref\n")) {
		m := header.FindSubmatch(file[at:])
		if m == nil {
			return nil, errLayout
		}
		number, _ := strconv.Atoi(string(m[1]))
		body := at + len(m[0])
		search := body
		if s := length.FindSubmatch(file[body:]); s != nil {
			n, _ := strconv.Atoi(string(s[1]))
			search += len(s[0]) + n
		}
		if search > len(file) {
			return nil, errLayout
		}
		end := bytes.Index(file[search:], []byte("\nendobj\n"))
		if end < 0 {
			return nil, errLayout
		}
		objects = append(objects, object{number, at, file[body : search+end]})
		at = search + end + len("\nendobj\n")
	}
	if len(objects) == 0 {
		return nil, errLayout
	}
	return objects, nil
}

var (
	creationDate = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`/CreationDate\([^)]*\)`) })
	streamDict   = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`^<<(.*?)(/Filter/FlateDecode)?/Length \d+>>stream\n`)
	})
)

// settled returns an object's body as it is to stand in the file.
func settled(body, catalog []byte, title string) ([]byte, error) {
	if rest, found := bytes.CutPrefix(body, []byte("<</Type/Catalog")); found {
		return slices.Concat([]byte("<</Type/Catalog"), catalog, rest), nil
	}
	if bytes.HasPrefix(body, []byte("<</CreationDate")) {
		return creationDate().ReplaceAllLiteral(body, append([]byte("/Title"), pdfText(title)...)), nil
	}
	m := streamDict().FindSubmatchIndex(body)
	if m == nil {
		return body, nil
	}
	data := bytes.TrimSuffix(body[m[1]:], []byte("\nendstream\n"))
	if m[4] >= 0 {
		plain, err := inflate(data)
		if err != nil {
			return nil, err
		}
		data = plain
	}
	entries := body[m[2]:m[3]:m[3]]
	if clearTimestamps(data) {
		entries = fmt.Appendf(entries, "/Length1 %d", len(data)) // ISO 32000-1, 9.9, which canvas forgets
	}
	packed, err := deflate(data)
	if err != nil {
		return nil, err
	}
	out := fmt.Appendf(nil, "<<%s/Filter/FlateDecode/Length %d>>stream\n", entries, len(packed))
	return slices.Concat(out, packed, []byte("\nendstream\n")), nil
}

func inflate(data []byte) ([]byte, error) {
	r, err := zlib.NewReader(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	return io.ReadAll(r)
}

func deflate(data []byte) ([]byte, error) {
	var b bytes.Buffer
	w := zlib.NewWriter(&b)
	if _, err := w.Write(data); err != nil {
		return nil, err
	}
	err := w.Close()
	return b.Bytes(), err
}
