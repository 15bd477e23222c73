package disk_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"roundlay/cmd/disk"
)

// Two files are written together. Where one of them can't be, neither is.
func Example() {
	folder, err := os.MkdirTemp("", "disk")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(folder)
	var outs []disk.Output
	for _, name := range []string{"fern.pdf", "fern.svg"} {
		place, err := disk.Locate(filepath.Join(folder, name))
		if err != nil {
			fmt.Println(err)
			return
		}
		outs = append(outs, disk.Output{Path: name, Place: place, Data: []byte("a fern")})
	}
	fmt.Println(disk.Write(context.Background(), disk.Real{}, outs...))

	outs[0].Data = []byte("a swag")
	outs[1].New = true // only where there is none yet
	fmt.Println(disk.Write(context.Background(), disk.Real{}, outs...))
	data, _ := os.ReadFile(outs[0].File)
	fmt.Printf("%s\n", data)
	// Output:
	// <nil>
	// fern.svg can't be written: file exists
	// a fern
}
