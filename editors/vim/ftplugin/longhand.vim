" Vim filetype plugin
" Language: longhand, plans of long takes

if exists("b:did_ftplugin")
  finish
endif
let b:did_ftplugin = 1

setlocal comments=:#
setlocal commentstring=#\ %s
setlocal formatoptions-=t formatoptions+=croql
setlocal expandtab shiftwidth=2 softtabstop=2
setlocal iskeyword=@,48-57,192-255,-
setlocal suffixesadd=.take

if executable("longhand")
  compiler longhand
endif

let b:undo_ftplugin = "setlocal comments< commentstring< formatoptions< expandtab< shiftwidth< softtabstop< iskeyword< suffixesadd< makeprg< errorformat<"
