// Package lsp is the language server: it speaks the Language Server Protocol,
// version 3.17, on two pipes, and answers about plans while they are written.
//
// Documents are kept in memory, as the editor has them, and win over files, for
// `use` across files, too. What a handler answers is a pure function of a
// [Snapshot], which never changes, and a byte offset; positions in lines and
// UTF-16 units exist only where a message is read or written. Mistakes of the
// text are published with each change; the clock, the moves and the lenses are
// checked in the background, and a check of a text that has changed since is
// given up. A handler that panics is answered with an error, and the server goes
// on.
//
// What is said of a statement comes from the statement table: a new statement
// needs no change here. The package imports what compiles plans, and nothing that
// draws them.
package lsp
