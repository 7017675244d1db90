// Command dryfit reviews the design of a small aquaponic loop before a hole is cut.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr, os.Getenv)) }
