" Reads the findings in the first file of $PLANS as :make would, and writes to $OUT
" what the quickfix list holds: file, line, column, kind and text.
set encoding=utf-8 nomodeline
compiler! longhand
let s:out = [&makeprg]
cgetexpr readfile(split($PLANS, "\n")[0])
for s:one in getqflist()
  call add(s:out, join([bufname(s:one.bufnr), s:one.lnum, s:one.col, s:one.type, s:one.text], '|'))
endfor
call writefile(s:out + ['--'], $OUT)
qa!
