" Vim compiler file
" Compiler: longhand check: findings in the quickfix list

if exists("current_compiler")
  finish
endif
let current_compiler = "longhand"

let s:cpo_save = &cpo
set cpo&vim

CompilerSet makeprg=longhand\ check\ --as\ short\ %:S
CompilerSet errorformat=%f:%l:%c:\ %t%*[a-z]:\ %m,%-G%.%#

let &cpo = s:cpo_save
unlet s:cpo_save
