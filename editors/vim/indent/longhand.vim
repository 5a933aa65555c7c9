" Vim indent file
" Language: longhand, plans of long takes
" Made from the statement table. Change lang/highlight or lang/syntax, then run: go generate ./lang/highlight

if exists("b:did_indent")
  finish
endif
let b:did_indent = 1

setlocal indentexpr=LonghandIndent()
setlocal indentkeys=o,O,!^F,0=~take,0=~set,0=~kit,0=~people,0=~look,0=~beat,0=~pickup
setlocal nosmartindent

let b:undo_indent = "setlocal indentexpr< indentkeys< smartindent<"

if exists("*LonghandIndent")
  finish
endif

function LonghandIndent() abort
  let l:header = '\v^\s*%(take|set|kit|people|look|beat|pickup)>'
  if getline(v:lnum) =~# l:header
    return 0
  endif
  let l:before = prevnonblank(v:lnum - 1)
  if l:before == 0
    return 0
  endif
  let l:text = substitute(getline(l:before), '\s*#[^"]*$', '', '')
  if l:text =~# ',\s*$'
    return 4
  endif
  while l:before > 0 && getline(l:before) =~# '^\s*#'
    let l:before = prevnonblank(l:before - 1)
  endwhile
  return l:before == 0 ? 0 : 2
endfunction
