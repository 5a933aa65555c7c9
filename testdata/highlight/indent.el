;;; Indents the files in $PLANS anew and writes them to $OUT; a line with -- ends
;;; a file.
(require 'longhand-mode)
(let ((coding-system-for-read 'utf-8-unix) (coding-system-for-write 'utf-8-unix) (out '()))
  (dolist (file (split-string (getenv "PLANS") "\n" t))
    (with-current-buffer (find-file-noselect file)
      (goto-char (point-min))
      (while (re-search-forward "^[ \t]+" nil t) (replace-match ""))
      (indent-region (point-min) (point-max))
      (push (buffer-string) out)
      (push "--\n" out)
      (set-buffer-modified-p nil)))
  (with-temp-file (getenv "OUT")
    (insert (mapconcat #'identity (nreverse out) ""))))
