" Vim syntax file
" Language: longhand, plans of long takes
" Made from the statement table. Change lang/highlight or lang/syntax, then run: go generate ./lang/highlight

if exists("b:current_syntax")
  finish
endif

scriptencoding utf-8
syntax case match
syntax iskeyword @,48-57,192-255,-
syntax sync minlines=1

syntax match longhandWrong /\v[“„«»‘`'′’”″]/
syntax match longhandMark /\v[(),+×]/
syntax match longhandName /\v%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*/
syntax match longhandOption /\v%(golden\-evening|golden\-morning|nautical\-dawn|nautical\-dusk|camera\-right|camera\-left|fifty\-fifty|three\-phase|civil\-dawn|civil\-dusk|shoulders|carries|changes|reaches|squeeze|tighter|colour|height|leaves|metres|modern|points|sensor|spread|starts|weighs|weight|within|cable|chest|close|frame|glass|least|never|night|opens|racks|reach|scale|seats|shuts|speed|stops|thick|thigh|tilts|under|waist|width|aims|back|beat|card|ends|eyes|face|feet|film|full|gear|into|knee|lens|most|open|rise|roll|says|seen|shut|size|than|wide|wild|zone|zoom|bar|cue|day|out|pan)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/
syntax match longhandJoin /\v%(x)%(%([ \t\u00a0\u2009\u202f\ufeff])*[0-9])@=/
syntax match longhandJoin /\v%(backwards|starting|straight|because|before|behind|curved|during|facing|after|eight|minus|right|round|until|down|from|high|left|over|plus|when|with|for|via|at|by|in|of|on|to|up)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/
syntax match longhandStop /\vT%([0-9])+\.%([0-9])+/
syntax match longhandNumber /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)/
syntax match longhandNumber /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9])|[\-.\/]%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9])))*/
syntax match longhandNumber /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)%([ \t\u00a0\u2009\u202f\ufeff])*%(%(words\/min|degrees|minutes|seconds|counts|degree|frames|inches|meters|metres|minute|second|cd\/m2|count|deg\/s|frame|hours|meter|metre|bars|feet|foot|ft\/s|hour|inch|km\/h|°\/s|AWG|bar|bpm|deg|fps|lbs|m\/s|min|mm2|mph|sec|cd|cm|ft|in|kW|kg|lb|mm|ms|A|K|V|W|f|g|h|m|s)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!|%(mm²|°|\%))/
syntax match longhandNumber /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)%([ \t\u00a0\u2009\u202f\ufeff])*%(feet|foot|ft)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!%([ \t\u00a0\u2009\u202f\ufeff])+%([0-9])+%(\.%([0-9])+)?%([ \t\u00a0\u2009\u202f\ufeff])*%(inches|inch|in)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!%(%([ \t\u00a0\u2009\u202f\ufeff])*%([+\-])?%(\.)?[0-9])@!/
syntax match longhandNumber /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)%(["″”]|%([ \t\u00a0\u2009\u202f\ufeff])*[½¼¾⅛⅜⅝⅞]["″”]|%(%([ \t\u00a0\u2009\u202f\ufeff])+%([0-9])+)?\/%([0-9])+["″”])/
syntax match longhandNumber /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)['′’]%(%(%([ \t\u00a0\u2009\u202f\ufeff])+|%(\-)?)%(%([0-9])+%(\.%([0-9])+)?%(["″”]|%([ \t\u00a0\u2009\u202f\ufeff])*[½¼¾⅛⅜⅝⅞]["″”]|%(%([ \t\u00a0\u2009\u202f\ufeff])+%([0-9])+)?\/%([0-9])+["″”])|[½¼¾⅛⅜⅝⅞]["″”]))?/
syntax match longhandNumber /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)%(%([ \t\u00a0\u2009\u202f\ufeff])*in%([ \t\u00a0\u2009\u202f\ufeff])+%([+\-])?%(\.)?[0-9])@=/
syntax match longhandNumber /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)%(\:%([0-9])+%(\.%([0-9])+)?)+/
syntax match longhandNumber /\v%([+\-])?%([0-9])+\-%([0-9])+\-%([0-9])+/
syntax match longhandStop_14_4 /\vT%([0-9])+%(\.%([0-9])+)?%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ contained
syntax match longhandJoin_14_3 /\v%(to)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ contained skipwhite nextgroup=longhandStop_14_4
syntax match longhandStop_14_2 /\vT%([0-9])+%(\.%([0-9])+)?%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ contained skipwhite nextgroup=longhandJoin_14_3
syntax match longhandOption /\v%(stops)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!%(%([ \t\u00a0\u2009\u202f\ufeff])+T%([0-9])+%(\.%([0-9])+)?%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!%([ \t\u00a0\u2009\u202f\ufeff])+%(to)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!%([ \t\u00a0\u2009\u202f\ufeff])+T%([0-9])+%(\.%([0-9])+)?%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!)@=/ skipwhite nextgroup=longhandStop_14_2
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(sensitivity|exposure|revision|shutter|aspect|record|faces|never|place|reset|scene|tempo|units|blur|date|film|only|pace|plan|rate|roll|pan)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/
syntax match longhandClass_12_2 /\v%(body\-rig|handheld|gimbal|slider|sticks|cable|crane|dolly|cart|hide|jib)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ contained
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(speed)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ skipwhite nextgroup=longhandClass_12_2
syntax match longhandDeclared_11_2 /\v%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*/ contained
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(performer|platform|camera|mirror|pillar|stairs|supply|window|block|crew|door|glow|grid|hole|lamp|mark|wall|wash)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ skipwhite nextgroup=longhandDeclared_11_2
syntax match longhandClass_10_3 /\v%(body\-rig|handheld|gimbal|slider|sticks|cable|crane|dolly|cart|hide|jib)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ contained
syntax match longhandDeclared_10_2 /\v%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*/ contained skipwhite nextgroup=longhandClass_10_3
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(rig)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ skipwhite nextgroup=longhandDeclared_10_2,longhandClass_10_3
syntax match longhandNumber_9_3 /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)%([ \t\u00a0\u2009\u202f\ufeff])*%(%(words\/min|degrees|minutes|seconds|counts|degree|frames|inches|meters|metres|minute|second|cd\/m2|count|deg\/s|frame|hours|meter|metre|bars|feet|foot|ft\/s|hour|inch|km\/h|°\/s|AWG|bar|bpm|deg|fps|lbs|m\/s|min|mm2|mph|sec|cd|cm|ft|in|kW|kg|lb|mm|ms|A|K|V|W|f|g|h|m|s)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!|%(mm²|°|\%))/ contained
syntax match longhandDeclared_9_2 /\v%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*/ contained skipwhite nextgroup=longhandNumber_9_3
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(vehicle|card|lens)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ skipwhite nextgroup=longhandDeclared_9_2,longhandNumber_9_3
syntax match longhandVerb_8_2 /\v%(counters|crouches|circles|follows|beside|boards|closes|drives|kneels|leaves|lowers|pushes|stands|hides|leads|moves|opens|pulls|racks|rests|rides|rises|rolls|shuts|spins|spots|tilts|turns|waits|walks|pans|runs|says|sees|sits|on)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ contained
syntax match longhandName /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*%(%([ \t\u00a0\u2009\u202f\ufeff])+%(counters|crouches|circles|follows|beside|boards|closes|drives|kneels|leaves|lowers|pushes|stands|hides|leads|moves|opens|pulls|racks|rests|rides|rises|rolls|shuts|spins|spots|tilts|turns|waits|walks|pans|runs|says|sees|sits|on)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!)@=/ skipwhite nextgroup=longhandVerb_8_2
syntax match longhandStop_7_5 /\vT%([0-9])+%(\.%([0-9])+)?%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ contained
syntax match longhandNumber_7_4 /\v%([+\-])?%(%([0-9])+%(\.%([0-9])+)?|\.%([0-9])+)%([ \t\u00a0\u2009\u202f\ufeff])*%(%(words\/min|degrees|minutes|seconds|counts|degree|frames|inches|meters|metres|minute|second|cd\/m2|count|deg\/s|frame|hours|meter|metre|bars|feet|foot|ft\/s|hour|inch|km\/h|°\/s|AWG|bar|bpm|deg|fps|lbs|m\/s|min|mm2|mph|sec|cd|cm|ft|in|kW|kg|lb|mm|ms|A|K|V|W|f|g|h|m|s)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!|%(mm²|°|\%))/ contained skipwhite nextgroup=longhandStop_7_5
syntax match longhandName_7_3 /\v%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*/ contained skipwhite nextgroup=longhandNumber_7_4,longhandStop_7_5
syntax match longhandVerb_7_2 /\v%(takes)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ contained skipwhite nextgroup=longhandName_7_3,longhandNumber_7_4,longhandStop_7_5
syntax match longhandName /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*%(%([ \t\u00a0\u2009\u202f\ufeff])+%(takes)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!)@=/ skipwhite nextgroup=longhandVerb_7_2
syntax match longhandDeclared_6_2 /\v%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*/ contained
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(camera)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!%(%([ \t\u00a0\u2009\u202f\ufeff])+%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*%([ \t\u00a0\u2009\u202f\ufeff])+sensor%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!)@=/ skipwhite nextgroup=longhandDeclared_6_2
syntax match longhandDeclared_5_2 /\v%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*/ contained
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(mirror|window|door|glow|hole)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!%(%([ \t\u00a0\u2009\u202f\ufeff])+%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*%([ \t\u00a0\u2009\u202f\ufeff])+on%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!)@=/ skipwhite nextgroup=longhandDeclared_5_2
syntax match longhandDeclared_4_2 /\v%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*/ contained
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(platform|pillar|stairs|block|grid|mark|wall)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!%(%([ \t\u00a0\u2009\u202f\ufeff])+%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*%([ \t\u00a0\u2009\u202f\ufeff])*\()@=/ skipwhite nextgroup=longhandDeclared_4_2
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(handoff|allow|paint|note|cut|use)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/
syntax match longhandDeclared_2_2 /\v%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])%(%(\-)?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))*/ contained
syntax match longhandStatement /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(cue)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/ skipwhite nextgroup=longhandDeclared_2_2
syntax match longhandSection /\v%(^[ \t\u00a0\u2009\u202f\ufeff]*)@<=%(people|pickup|beat|look|take|kit|set)%(\-?%(%(\a|[^\x00-\x7f'′’"″”½¼¾⅛⅜⅝⅞(),+×“„«»‘`° \t\u00a0\u2009\u202f\ufeff])|[0-9]))@!/
syntax match longhandEscape /\\./ contained
syntax region longhandText start=/"/ skip=/\\./ end=/"\|$/ oneline keepend contains=longhandEscape,@Spell
syntax match longhandComment /#.*/ contains=@Spell

highlight default link longhandComment Comment
highlight default link longhandText String
highlight default link longhandEscape SpecialChar
highlight default link longhandNumber Number
highlight default link longhandNumber_7_4 longhandNumber
highlight default link longhandNumber_9_3 longhandNumber
highlight default link longhandStop Float
highlight default link longhandStop_14_2 longhandStop
highlight default link longhandStop_14_4 longhandStop
highlight default link longhandStop_7_5 longhandStop
highlight default link longhandSection Structure
highlight default link longhandStatement Statement
highlight default link longhandVerb Function
highlight default link longhandVerb_7_2 longhandVerb
highlight default link longhandVerb_8_2 longhandVerb
highlight default link longhandJoin Operator
highlight default link longhandJoin_14_3 longhandJoin
highlight default link longhandOption Constant
highlight default link longhandClass Type
highlight default link longhandClass_10_3 longhandClass
highlight default link longhandClass_12_2 longhandClass
highlight default link longhandDeclared Identifier
highlight default link longhandDeclared_10_2 longhandDeclared
highlight default link longhandDeclared_11_2 longhandDeclared
highlight default link longhandDeclared_2_2 longhandDeclared
highlight default link longhandDeclared_4_2 longhandDeclared
highlight default link longhandDeclared_5_2 longhandDeclared
highlight default link longhandDeclared_6_2 longhandDeclared
highlight default link longhandDeclared_9_2 longhandDeclared
highlight default link longhandMark Delimiter
highlight default link longhandWrong Error

let b:current_syntax = "longhand"
