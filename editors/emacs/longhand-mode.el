;;; longhand-mode.el --- Plans of long takes  -*- lexical-binding: t; coding: utf-8 -*-

;; Version: 1.0
;; Package-Requires: ((emacs "26.1"))
;; Keywords: languages

;;; Commentary:

;; Colours plans, indents them as the formatter does, and starts the language
;; server with `M-x eglot'.
;;
;; Made from the statement table. Change lang/highlight or lang/syntax, then run: go generate ./lang/highlight

;;; Code:

(defgroup longhand nil
  "Plans of long takes."
  :group 'languages)

(defcustom longhand-program "longhand"
  "The program that checks plans and speaks to the editor."
  :type 'string)

(defvar longhand-font-lock-keywords
  (list
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:people\\|pickup\\|beat\\|look\\|take\\|kit\\|set\\)\\_>\\)"
         '(1 'font-lock-preprocessor-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:cue\\)\\_>\\)\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\)?"
         '(1 'font-lock-keyword-face nil t)
         '(2 'font-lock-variable-name-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:handoff\\|allow\\|paint\\|note\\|cut\\|use\\)\\_>\\)"
         '(1 'font-lock-keyword-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:platform\\|pillar\\|stairs\\|block\\|grid\\|mark\\|wall\\)\\_>\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*("
         '(1 'font-lock-keyword-face nil t)
         '(2 'font-lock-variable-name-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:mirror\\|window\\|door\\|glow\\|hole\\)\\_>\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+on\\_>"
         '(1 'font-lock-keyword-face nil t)
         '(2 'font-lock-variable-name-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:camera\\)\\_>\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+sensor\\_>"
         '(1 'font-lock-keyword-face nil t)
         '(2 'font-lock-variable-name-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<\\(?:takes\\)\\_>\\)\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\)?\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*\\(?:\\(?:words/min\\|degrees\\|minutes\\|seconds\\|counts\\|degree\\|frames\\|inches\\|meters\\|metres\\|minute\\|second\\|cd/m2\\|count\\|deg/s\\|frame\\|hours\\|meter\\|metre\\|bars\\|feet\\|foot\\|ft/s\\|hour\\|inch\\|km/h\\|°/s\\|AWG\\|bar\\|bpm\\|deg\\|fps\\|lbs\\|m/s\\|min\\|mm2\\|mph\\|sec\\|cd\\|cm\\|ft\\|in\\|kW\\|kg\\|lb\\|mm\\|ms\\|A\\|K\\|V\\|W\\|f\\|g\\|h\\|m\\|s\\)\\_>\\|\\(?:mm²\\|°\\|%\\)\\)\\)\\)?\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<T\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\_>\\)\\)?"
         '(1 'default nil t)
         '(2 'font-lock-function-name-face nil t)
         '(3 'default nil t)
         '(4 'font-lock-constant-face nil t)
         '(5 'font-lock-constant-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<\\(?:counters\\|crouches\\|circles\\|follows\\|beside\\|boards\\|closes\\|drives\\|kneels\\|leaves\\|lowers\\|pushes\\|stands\\|hides\\|leads\\|moves\\|opens\\|pulls\\|racks\\|rests\\|rides\\|rises\\|rolls\\|shuts\\|spins\\|spots\\|tilts\\|turns\\|waits\\|walks\\|pans\\|runs\\|says\\|sees\\|sits\\|on\\)\\_>\\)"
         '(1 'default nil t)
         '(2 'font-lock-function-name-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:vehicle\\|card\\|lens\\)\\_>\\)\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\)?\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*\\(?:\\(?:words/min\\|degrees\\|minutes\\|seconds\\|counts\\|degree\\|frames\\|inches\\|meters\\|metres\\|minute\\|second\\|cd/m2\\|count\\|deg/s\\|frame\\|hours\\|meter\\|metre\\|bars\\|feet\\|foot\\|ft/s\\|hour\\|inch\\|km/h\\|°/s\\|AWG\\|bar\\|bpm\\|deg\\|fps\\|lbs\\|m/s\\|min\\|mm2\\|mph\\|sec\\|cd\\|cm\\|ft\\|in\\|kW\\|kg\\|lb\\|mm\\|ms\\|A\\|K\\|V\\|W\\|f\\|g\\|h\\|m\\|s\\)\\_>\\|\\(?:mm²\\|°\\|%\\)\\)\\)\\)?"
         '(1 'font-lock-keyword-face nil t)
         '(2 'font-lock-variable-name-face nil t)
         '(3 'font-lock-constant-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:rig\\)\\_>\\)\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\)?\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<\\(?:body-rig\\|handheld\\|gimbal\\|slider\\|sticks\\|cable\\|crane\\|dolly\\|cart\\|hide\\|jib\\)\\_>\\)\\)?"
         '(1 'font-lock-keyword-face nil t)
         '(2 'font-lock-variable-name-face nil t)
         '(3 'font-lock-type-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:performer\\|platform\\|camera\\|mirror\\|pillar\\|stairs\\|supply\\|window\\|block\\|crew\\|door\\|glow\\|grid\\|hole\\|lamp\\|mark\\|wall\\|wash\\)\\_>\\)\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<[[:alpha:]]\\(?:\\(?:-\\)?\\(?:[[:alpha:]]\\|[0-9]\\)\\)*\\)\\)?"
         '(1 'font-lock-keyword-face nil t)
         '(2 'font-lock-variable-name-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:speed\\)\\_>\\)\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<\\(?:body-rig\\|handheld\\|gimbal\\|slider\\|sticks\\|cable\\|crane\\|dolly\\|cart\\|hide\\|jib\\)\\_>\\)\\)?"
         '(1 'font-lock-keyword-face nil t)
         '(2 'font-lock-type-face nil t))
   (list "^[ \t\u00a0\u2009\u202f\ufeff]*\\(\\_<\\(?:sensitivity\\|exposure\\|revision\\|shutter\\|aspect\\|record\\|faces\\|never\\|place\\|reset\\|scene\\|tempo\\|units\\|blur\\|date\\|film\\|only\\|pace\\|plan\\|rate\\|roll\\|pan\\)\\_>\\)"
         '(1 'font-lock-keyword-face nil t))
   (list "\\(\\_<\\(?:stops\\)\\_>\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<T\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\_>\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<\\(?:to\\)\\_>\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(\\_<T\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\_>\\)"
         '(1 'font-lock-type-face nil t)
         '(2 'font-lock-constant-face nil t)
         '(3 'font-lock-builtin-face nil t)
         '(4 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:[+-]\\)?\\(?:[0-9]\\)+-\\(?:[0-9]\\)+-\\(?:[0-9]\\)+\\)"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)\\(?::\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\)+\\)"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*in\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(?:[+-]\\)?\\(?:\\.\\)?[0-9]"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)['′’]\\(?:\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\|\\(?:-\\)?\\)\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\(?:[\"″”]\\|\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*[½¼¾⅛⅜⅝⅞][\"″”]\\|\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(?:[0-9]\\)+\\)?/\\(?:[0-9]\\)+[\"″”]\\)\\|[½¼¾⅛⅜⅝⅞][\"″”]\\)\\)?\\)"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)\\(?:[\"″”]\\|\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*[½¼¾⅛⅜⅝⅞][\"″”]\\|\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(?:[0-9]\\)+\\)?/\\(?:[0-9]\\)+[\"″”]\\)\\)"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*\\(?:feet\\|foot\\|ft\\)\\_>\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*\\(?:inches\\|inch\\|in\\)\\_>\\)"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*\\(?:\\(?:words/min\\|degrees\\|minutes\\|seconds\\|counts\\|degree\\|frames\\|inches\\|meters\\|metres\\|minute\\|second\\|cd/m2\\|count\\|deg/s\\|frame\\|hours\\|meter\\|metre\\|bars\\|feet\\|foot\\|ft/s\\|hour\\|inch\\|km/h\\|°/s\\|AWG\\|bar\\|bpm\\|deg\\|fps\\|lbs\\|m/s\\|min\\|mm2\\|mph\\|sec\\|cd\\|cm\\|ft\\|in\\|kW\\|kg\\|lb\\|mm\\|ms\\|A\\|K\\|V\\|W\\|f\\|g\\|h\\|m\\|s\\)\\_>\\|\\(?:mm²\\|°\\|%\\)\\)\\)"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)[[:alpha:]]\\(?:\\(?:\\(?:[[:alpha:]]\\|[0-9]\\)\\|[./-]\\(?:[[:alpha:]]\\|[0-9]\\)\\)\\)*\\)"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)\\)"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<T\\(?:[0-9]\\)+\\.\\(?:[0-9]\\)+\\)"
         '(1 'font-lock-constant-face nil t))
   (list "\\(\\_<\\(?:backwards\\|starting\\|straight\\|because\\|before\\|behind\\|curved\\|during\\|facing\\|after\\|eight\\|minus\\|right\\|round\\|until\\|down\\|from\\|high\\|left\\|over\\|plus\\|when\\|with\\|for\\|via\\|at\\|by\\|in\\|of\\|on\\|to\\|up\\)\\_>\\)"
         '(1 'font-lock-builtin-face nil t))
   (list "\\(\\_<\\(?:x\\)\\)\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*[0-9]"
         '(1 'font-lock-builtin-face nil t))
   (list "\\(\\_<\\(?:golden-evening\\|golden-morning\\|nautical-dawn\\|nautical-dusk\\|camera-right\\|camera-left\\|fifty-fifty\\|three-phase\\|civil-dawn\\|civil-dusk\\|shoulders\\|carries\\|changes\\|reaches\\|squeeze\\|tighter\\|colour\\|height\\|leaves\\|metres\\|modern\\|points\\|sensor\\|spread\\|starts\\|weighs\\|weight\\|within\\|cable\\|chest\\|close\\|frame\\|glass\\|least\\|never\\|night\\|opens\\|racks\\|reach\\|scale\\|seats\\|shuts\\|speed\\|stops\\|thick\\|thigh\\|tilts\\|under\\|waist\\|width\\|aims\\|back\\|beat\\|card\\|ends\\|eyes\\|face\\|feet\\|film\\|full\\|gear\\|into\\|knee\\|lens\\|most\\|open\\|rise\\|roll\\|says\\|seen\\|shut\\|size\\|than\\|wide\\|wild\\|zone\\|zoom\\|bar\\|cue\\|day\\|out\\|pan\\)\\_>\\)"
         '(1 'font-lock-type-face nil t))
   (list "\\([“„«»‘`'′’”″]\\)"
         '(1 'font-lock-warning-face nil t)))
  "What is coloured; earlier rules win.")

(defvar longhand-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?\" "." table)
    (modify-syntax-entry ?' "." table)
    (modify-syntax-entry ?\\ "." table)
    (dolist (inner '(?- ?+ ?.))
      (modify-syntax-entry inner "_" table))
    (modify-syntax-entry ?% "." table)
    (modify-syntax-entry ?/ "." table)
    (modify-syntax-entry ?_ "." table)
    (dolist (sign '(?′ ?’ ?″ ?” ?½ ?¼ ?¾ ?⅛ ?⅜ ?⅝ ?⅞ ?× ?°))
      (modify-syntax-entry sign "." table))
    table)
  "A quote starts a text unless it is an inch mark; see `longhand--quotes'.")

(defconst longhand--pieces
  (concat "\\(#\\)\\|\\(\\_<\\(?:[+-]\\)?\\(?:\\(?:[0-9]\\)+\\(?:\\.\\(?:[0-9]\\)+\\)?\\|\\.\\(?:[0-9]\\)+\\)\\(?:['′’]\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\|\\(?:-\\)?\\)\\(?:[0-9]\\)+\\)?\\(?:[\"″”]\\|\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)*[½¼¾⅛⅜⅝⅞][\"″”]\\|\\(?:\\(?:[ \t\u00a0\u2009\u202f\ufeff]\\)+\\(?:[0-9]\\)+\\)?/\\(?:[0-9]\\)+[\"″”]\\)\\)"
          "\\|\\(\"\\)\\(?:[^\"\\\\\n]\\|\\\\.\\)*\\(\"\\|\\\\?$\\)")
  "A comment, inches, or a text.")

(defun longhand--quotes (start end)
  "Tell texts from inch marks between START and END."
  (goto-char start)
  (while (re-search-forward longhand--pieces end t)
    (cond
     ((match-beginning 1) (end-of-line))
     ((match-beginning 3)
      (let ((open (match-beginning 3)) (last (match-end 0)))
        (when (> (- last open) 1)
          (put-text-property open (1+ open) 'syntax-table (string-to-syntax "|"))
          (put-text-property (1- last) last 'syntax-table (string-to-syntax "|"))))))))

(defvar longhand--sections '("take" "set" "kit" "people" "look" "beat" "pickup")
  "The words that start a section.")

(defun longhand--header-p ()
  "Whether the line begins a section."
  (looking-at (concat "[ \t]*" (regexp-opt longhand--sections) "\\_>")))

(defun longhand--comment-p ()
  "Whether the line is empty or a comment alone."
  (looking-at "[ \t]*\\(?:#\\|$\\)"))

(defun longhand--goes-on-p ()
  "Whether the statement of the line ends in a comma."
  (let ((end (line-end-position)))
    (save-excursion
      (while (and (re-search-forward "#\\|\"\\(?:[^\"\\\n]\\|\\\\.\\)*\"" end t)
                  (not (eq (char-before) ?#))))
      (if (eq (char-before) ?#) (backward-char) (goto-char end))
      (skip-chars-backward " \t")
      (eq (char-before) ?,))))

(defun longhand--column ()
  "How far in the line at point is to stand: as the formatter has it."
  (save-excursion
    (beginning-of-line)
    (let ((here (point)) next before)
      (save-excursion
        (while (and (looking-at "[ \t]*#") (zerop (forward-line)) (not (eobp))))
        (setq next (longhand--header-p)))
      (while (and (zerop (forward-line -1)) (longhand--comment-p)))
      (setq before (and (< (point) here) (not (longhand--comment-p))))
      (cond (next 0)
            ((not before) 0)
            ((longhand--goes-on-p) 6)
            ((or (longhand--header-p)
                 (re-search-backward (concat "^[ \t]*" (regexp-opt longhand--sections) "\\_>") nil t))
             2)
            (t 0)))))

(defun longhand-indent-line ()
  "Indent a line: headers at the margin, their lines two in."
  (interactive)
  (let ((column (longhand--column)))
    (if (<= (current-column) (current-indentation))
        (indent-line-to column)
      (save-excursion (indent-line-to column)))))

;;;###autoload
(define-derived-mode longhand-mode prog-mode "Longhand"
  "A mode for plans of long takes."
  (setq-local comment-start "# ")
  (setq-local comment-end "")
  (setq-local comment-start-skip "#+[ \t]*")
  (setq-local indent-tabs-mode nil)
  (setq-local indent-line-function #'longhand-indent-line)
  (setq-local syntax-propertize-function #'longhand--quotes)
  (setq-local parse-sexp-lookup-properties t)
  (setq-local imenu-generic-expression
              `((nil ,(concat "^" (regexp-opt longhand--sections t) "\\_>[ \t]*\\(.*\\)") 0)))
  (setq-local font-lock-defaults '(longhand-font-lock-keywords)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.take\\'" . longhand-mode))

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs
               (cons 'longhand-mode (list longhand-program "lsp"))))

(provide 'longhand-mode)
;;; longhand-mode.el ends here
