package cli

// The scripts of the shells. None evaluates the line: quiltrun takes its words
// apart itself (tabRequest) and hands back what may stand there. The first line of
// its answer holds flags, each other line a candidate.

const bashScript = `# bash completion for quiltrun
__quiltrun_complete() {
    local line flags= first=1 name
    COMPREPLY=()
    while IFS= read -r line; do
        if [ "$first" ]; then
            first= flags=" $line "
        else
            COMPREPLY+=("$line")
        fi
    done < <("${1/#\~/$HOME}" __words bash "${COMP_LINE:0:COMP_POINT}" "$COMP_WORDBREAKS" 2>/dev/null)
    case $flags in
    *' nospace '*) compopt -o nospace 2>/dev/null ;;
    esac
    case $flags in
    *' nosort '*) compopt -o nosort 2>/dev/null ;;
    esac
    case $flags in
    *' files '*)
        compopt -o filenames 2>/dev/null
        while IFS= read -r name; do
            if [[ -d $name || $name == *.yaml || $name == *.yml ]]; then
                COMPREPLY+=("$name")
            fi
        done < <(compgen -f -- "$2")
        ;;
    *' dirs '*)
        compopt -o filenames 2>/dev/null
        while IFS= read -r name; do
            COMPREPLY+=("$name")
        done < <(compgen -d -- "$2")
        ;;
    esac
}
complete -F __quiltrun_complete quiltrun
`

const zshScript = `#compdef quiltrun
# zsh completion for quiltrun
_quiltrun() {
    local -a lines order space
    local flags
    lines=("${(@f)$("${(Q)words[1]}" __words zsh "${(@)words[2,CURRENT]}" 2>/dev/null)}")
    flags=$lines[1]
    shift lines
    [[ $flags == *nospace* ]] && space=(-S '')
    [[ $flags == *nosort* ]] && order=(-V)
    case $flags in
    *files*) _files -g '*.(yaml|yml)' ;;
    *dirs*) _files -/ ;;
    *)
        (( $#lines )) || return 1
        _describe "${(@)order}" -t quiltrun quiltrun lines "${(@)space}"
        ;;
    esac
}
if [ "$funcstack[1]" = "_quiltrun" ]; then
    _quiltrun "$@"
else
    compdef _quiltrun quiltrun
fi
`

const fishScript = `# fish completion for quiltrun
function __quiltrun_words
    set -l typed (commandline -opc)
    set -l last (commandline -ct)
    set -l lines (command $typed[1] __words fish $typed[2..-1] "$last" 2>/dev/null)
    switch "$lines[1]"
        case '*files*'
            __fish_complete_suffix .yaml
            __fish_complete_suffix .yml
        case '*dirs*'
            __fish_complete_directories "$last"
        case '*'
            test (count $lines) -gt 1; and printf '%s\n' $lines[2..-1]
    end
end
complete -c quiltrun -e
complete -c quiltrun -k -f -a '(__quiltrun_words)'
`
