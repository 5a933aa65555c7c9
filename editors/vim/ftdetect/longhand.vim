autocmd BufNewFile,BufRead *.take setfiletype longhand
