" Prints the syntax group of every byte of the files in $PLANS, a line a line,
" as 'group count' pairs; a line with '--' ends a file.
set encoding=utf-8 nomodeline
filetype plugin indent on
syntax on
let s:out = []
for s:file in split($PLANS, "\n")
  execute 'edit' fnameescape(s:file)
  if &filetype !=# 'longhand'
    call add(s:out, 'no file type: ' . &filetype)
  endif
  for s:lnum in range(1, line('$'))
    let s:runs = []
    for s:col in range(1, col([s:lnum, '$']) - 1)
      let s:name = synIDattr(synID(s:lnum, s:col, 1), 'name')
      call add(s:runs, s:name ==# '' ? '-' : s:name)
    endfor
    call add(s:out, join(s:runs, ' '))
  endfor
  call add(s:out, '--')
endfor
call writefile(s:out, $OUT)
qa!
