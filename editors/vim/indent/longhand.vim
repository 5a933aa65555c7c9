" Vim indent file
" Language: longhand, plans of long takes
" Made from the statement table. Change lang/highlight or lang/syntax, then run: go generate ./lang/highlight

if exists("b:did_indent")
  finish
endif
let b:did_indent = 1

setlocal indentexpr=LonghandIndent()
setlocal indentkeys=o,O,!^F,0#,0=~take,0=~set,0=~kit,0=~people,0=~look,0=~beat,0=~pickup
setlocal nosmartindent

let b:undo_indent = "setlocal indentexpr< indentkeys< smartindent<"

if exists("*LonghandIndent")
  finish
endif

let s:header = '\v^\s*%(take|set|kit|people|look|beat|pickup)>'

" The statement without its comment; a # in a text starts none.
function s:Statement(lnum) abort
  return substitute(getline(a:lnum), '\v^(%([^#"]|"%([^"\\]|\\.)*")*)#.*$', '\1', '')
endfunction

function s:IsComment(lnum) abort
  return getline(a:lnum) =~# '^\s*#'
endfunction

" Headers stand at the margin, and so do the comments right before them; the
" lines of a section two in, what a line goes on with six in.
function LonghandIndent() abort
  let l:at = v:lnum
  while l:at <= line('$') && s:IsComment(l:at)
    let l:at += 1
  endwhile
  if getline(l:at) =~# s:header
    return 0
  endif
  let l:before = prevnonblank(v:lnum - 1)
  while l:before > 0 && s:IsComment(l:before)
    let l:before = prevnonblank(l:before - 1)
  endwhile
  if l:before == 0
    return 0
  endif
  if s:Statement(l:before) =~# ',\s*$'
    return 6
  endif
  return search(s:header, 'bnW') > 0 || getline(l:before) =~# s:header ? 2 : 0
endfunction
