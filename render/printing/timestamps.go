package printing

import (
	"bytes"
	"encoding/binary"
)

// Places in a TrueType file and in its head table (OpenType specification 1.9).
const (
	tableCount    = 4  // in the file: how many tables there are
	tableRecords  = 12 // in the file: a record of 16 bytes for each
	adjustment    = 8  // in head: what makes the sum of the whole file come out right
	created       = 20 // in head: when the font was made
	modified      = 28 // in head: when it was cut down, which is now
	wholeFontsSum = 0xB1B0AFBA
)

// clearTimestamps takes the time of writing out of a TrueType font and corrects its
// checksums. Other data is left alone. It reports whether it was given a font.
func clearTimestamps(font []byte) bool {
	if !bytes.HasPrefix(font, []byte{0, 1, 0, 0}) || len(font) < tableRecords {
		return false
	}
	for i := range int(binary.BigEndian.Uint16(font[tableCount:])) {
		record := font[tableRecords+16*i:]
		if string(record[:4]) != "head" {
			continue
		}
		at, length := binary.BigEndian.Uint32(record[8:]), binary.BigEndian.Uint32(record[12:])
		head := font[at : at+length]
		copy(head[modified:modified+8], head[created:created+8])
		binary.BigEndian.PutUint32(head[adjustment:], 0)
		binary.BigEndian.PutUint32(record[4:], sum(head))
		binary.BigEndian.PutUint32(head[adjustment:], wholeFontsSum-sum(font))
	}
	return true
}

// sum adds up data in words of four bytes, as if padded with zeros.
func sum(data []byte) (total uint32) {
	for len(data) >= 4 {
		total += binary.BigEndian.Uint32(data)
		data = data[4:]
	}
	var last [4]byte
	copy(last[:], data)
	return total + binary.BigEndian.Uint32(last[:])
}
