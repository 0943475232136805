# SPDX-License-Identifier: GPL-3.0-or-later
# Completion of drawl-cli for bash: commands, their options, and values that are words. Needs nothing but bash.

_drawl_cli_words()
{
  local IFS=$'\n'
  COMPREPLY=($(compgen -W "$1" -- "$2"))
}

# The slates of the first plan on the command line, a line each.
_drawl_cli_slates()
{
  local word
  for word in "${COMP_WORDS[@]:2}"; do
    if [[ -f $word && -r $word && $word == *.drawl ]]; then
      grep -o '"slate" *: *"[^"\\]*"' -- "$word" | sed 's/^"slate" *: *"//; s/"$//'
      return
    fi
  done
}

_drawl_cli_complete_slate()
{
  local slate
  COMPREPLY=()
  while IFS= read -r slate; do
    [[ $slate == "$1"* ]] && COMPREPLY+=("$(printf '%q' "$slate")")
  done < <(_drawl_cli_slates)
}

# Files whose names end in one of the given endings, and folders.
_drawl_cli_files()
{
  local current=$1 name ending
  shift
  compopt -o filenames 2>/dev/null
  COMPREPLY=()
  while IFS= read -r name; do
    [[ -d $name ]] && COMPREPLY+=("$name")
    for ending in "$@"; do
      [[ -f $name && $name == *"$ending" ]] && COMPREPLY+=("$name")
    done
  done < <(compgen -f -- "$current")
}

_drawl_cli_options()
{
  case $1 in
    time) echo '--play --capture --action --screen --slow --post-speed --drop' ;;
    code) echo '--rate --drop --frames --code' ;;
    film) echo '--gauge --rate --feet --metres --frames --seconds' ;;
    store)
      echo '--width --height --bits --sampling --frame-bytes --mbps --at --constant-mbps --law' \
        '--rate --card-bytes --reserve --audio-tracks --seconds'
      ;;
    check) echo '--body --tier' ;;
    draw) echo '--shot --output --picture --dark' ;;
    sheet) echo '--output --for --paper' ;;
    export) echo '--output --as' ;;
    import) echo '--output --into' ;;
  esac
}

# Files that the command may write.
_drawl_cli_output()
{
  case ${COMP_WORDS[1]} in
    sheet) _drawl_cli_files "$1" .pdf ;;
    export) _drawl_cli_files "$1" .otio .edl .csv ;;
    import) _drawl_cli_files "$1" .drawl ;;
    *) _drawl_cli_files "$1" .png .svg .pdf ;;
  esac
}

# The values of option $1 that begin with $2. False when $1 is no option with a value.
_drawl_cli_value()
{
  case $1 in
    --gauge) _drawl_cli_words $'8\ns8\n16\n35-4\n35-3\n35-2\n65-5\n65-8\n65-15' "$2" ;;
    --sampling) _drawl_cli_words $'420\n422\n444\nmosaic' "$2" ;;
    --bits) _drawl_cli_words $'8\n10\n12\n14\n16' "$2" ;;
    --play) _drawl_cli_words $'24000/1001\n24\n25\n30000/1001\n30\n50\n60000/1001\n60' "$2" ;;
    --picture) _drawl_cli_words $'timeline\ncards' "$2" ;;
    --law)
      _drawl_cli_words "$(printf '%s\n' packed-420-8 packed-422-8 packed-422-10 words-422-10 \
        packed-444-8 packed-444-10 packed-444-12 packed-444-16 mosaic-10 mosaic-12 mosaic-14 mosaic-16 \
        dpx-444-10 dpx-444-16 vc3-{1235,1237,1238,1241,1242,1243,1250,1251,1252,1253})" "$2"
      ;;
    --shot) _drawl_cli_complete_slate "$2" ;;
    --body) _drawl_cli_files "$2" .json ;;
    --into) _drawl_cli_files "$2" .drawl ;;
    --for) _drawl_cli_words $'set\nhire\ncut' "$2" ;;
    --paper) _drawl_cli_words $'a4\nletter' "$2" ;;
    --as) _drawl_cli_words $'otio\nedl\ncsv' "$2" ;;
    -o | --output) _drawl_cli_output "$2" ;;
    --capture | --action | --screen | --slow | --post-speed | --rate | --frames | --code | --feet | --metres) ;;
    --seconds | --width | --height | --frame-bytes | --mbps | --at | --constant-mbps | --card-bytes) ;;
    --reserve | --audio-tracks | --tier) ;;
    *) return 1 ;;
  esac
  return 0
}

_drawl_cli()
{
  local current=${COMP_WORDS[COMP_CWORD]} previous=${COMP_WORDS[COMP_CWORD - 1]} command=${COMP_WORDS[1]}

  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    COMPREPLY=($(compgen -W 'time code film store check draw sheet export import --help --version' -- "$current"))
    return
  fi
  # readline cuts `--gauge=35` at the sign
  if [[ $current == '=' ]]; then
    current=''
  elif [[ $previous == '=' ]]; then
    previous=${COMP_WORDS[COMP_CWORD - 2]}
  fi
  if _drawl_cli_value "$previous" "$current"; then return; fi
  if [[ $current == -* ]]; then
    COMPREPLY=($(compgen -W "$(_drawl_cli_options "$command") --json --help" -- "$current"))
  elif [[ $command == check || $command == draw || $command == sheet || $command == export ]]; then
    _drawl_cli_files "$current" .drawl
  elif [[ $command == import ]]; then
    _drawl_cli_files "$current" .csv .tsv .txt
  fi
}

complete -F _drawl_cli drawl-cli
