// Package render turns plans into sheets of paper, true to size.
package render
