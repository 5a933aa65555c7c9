" Indents the files in $PLANS anew and writes them to $OUT; a line with '--' ends
" a file.
set encoding=utf-8 nomodeline hidden
filetype plugin indent on
let s:out = []
for s:file in split($PLANS, "\n")
  execute 'edit' fnameescape(s:file)
  silent! %s/^\s\+//e
  silent normal! gg=G
  call extend(s:out, getline(1, '$'))
  call add(s:out, '--')
endfor
call writefile(s:out, $OUT)
qa!
