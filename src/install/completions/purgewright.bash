# Completion for bash: commands, options, templates, job files and folders, what `trace` can trace.
_purgewright() {
  local word=${COMP_WORDS[COMP_CWORD]} previous=${COMP_WORDS[COMP_CWORD - 1]} command=${COMP_WORDS[1]}
  local given=0 i options=
  # Words after the command that are neither options nor their values.
  for ((i = 2; i < COMP_CWORD; ++i)); do
    case ${COMP_WORDS[i]} in
      -o | --output | --vary | --show | --rank | --shard | --tube | --cap | --stage | --cells | --duration | --run | --port) ((++i)) ;;
      -*) ;;
      *) ((++given)) ;;
    esac
  done
  if ((COMP_CWORD == 1)); then
    COMPREPLY=($(compgen -W 'new check design compare flow trace watch --help --version -h' -- "$word"))
    return
  fi
  case $command in
    new) options='-o --output --tube --cap' ;;
    check) options='--json --all --solve --strict' ;;
    design) options='-o --output --json --solve --strict --open' ;;
    compare) options='--vary --quick --show --rank --shard --merge -o --output --json' ;;
    flow) options='-o --output --stage --cells --duration --run --read' ;;
    watch) options='--port --open' ;;
  esac
  local IFS=$'\n'
  case $command:$previous in
    new:-o | new:--output) COMPREPLY=($(compgen -f -- "$word")) ;;
    *:-o | *:--output) COMPREPLY=($(compgen -d -- "$word")) ;;
    *:--vary | *:--show | *:--rank | *:--shard | *:--tube | *:--cells | *:--duration | *:--run | *:--port) COMPREPLY=() ;;
    *:--stage) COMPREPLY=($(compgen -W 'bore bore-outlet-below prepurge open away torch' -- "$word")) ;;
    *:--cap) COMPREPLY=($(compgen -W 'flat domed spigot' -- "$word")) ;;
    *)
      case $command:$given:$word in
        *:-*) IFS=$' \n' && COMPREPLY=($(compgen -W "$options -h --help" -- "$word")) ;;
        new:0:*) IFS=$' \n' && COMPREPLY=($(compgen -W 'flat-cap domed-cap spigot-cap' -- "$word")) ;;
        check:0:* | design:0:* | compare:*:* | watch:*:* | flow:0:* | trace:0:*)
          COMPREPLY=($(compgen -f -X '!*.@(yaml|yml)' -- "$word") $(compgen -d -- "$word")) ;;
        trace:*) COMPREPLY=($(compgen -W "$(_purgewright_quantities "${COMP_WORDS[2]}")" -- "$word")) ;;
      esac ;;
  esac
}

_purgewright_quantities() {
  purgewright check --json -- "$1" 2>/dev/null | sed -n 's/^ *"id": "\([^"]*\)".*/\1/p'
}

complete -o filenames -F _purgewright purgewright
