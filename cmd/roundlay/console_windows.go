package main

import (
	"syscall"
	"unsafe"
)

// ownConsole reports whether no other program is at this console: Windows opened it when the
// program was double-clicked. In a shell's console the shell is there too.
func ownConsole() bool {
	list := syscall.NewLazyDLL("kernel32.dll").NewProc("GetConsoleProcessList")
	if list.Find() != nil {
		return false
	}
	var processes [2]uint32
	n, _, _ := list.Call(uintptr(unsafe.Pointer(&processes[0])), uintptr(len(processes)))
	return n == 1
}
