// Command dryfit reviews the design of a small aquaponic loop before a hole is cut.
package main

import (
	"os"
	"runtime"
)

// room is how much more garbage may gather before it is collected, in bytes: about what the
// review of one loop leaves behind.
const room = 96 << 20

func main() {
	unused := make([]byte, room) // the collector goes by the size of the heap; what is never touched takes no memory
	status := run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr, os.Getenv)
	runtime.KeepAlive(unused)
	os.Exit(status)
}
