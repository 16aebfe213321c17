#compdef patternforge
# Completions of patternforge for zsh. What may come next is told by the program itself.

_patternforge() {
    local program=${${(Q)words[1]}/#\~/$HOME} before="" line value files=""
    local -a offers
    for value in "${(@Q)words[2,CURRENT-1]}"; do
        before+="\"$value\" "
    done

    for line in "${(@f)$("$program" "[suggest]" "$before$PREFIX" 2> /dev/null)}"; do
        value=${line%%$'\t'*}
        case $value in
            '') ;;
            :patterns | :folders) files=$value ;;
            *) offers+=("${value//:/\\:}:${line#*$'\t'}") ;;
        esac
    done

    (( ${#offers} )) && _describe 'what comes next' offers
    if [[ -n $files ]]; then
        compset -P '--*='
        if [[ $files == :folders ]]; then
            _files -/
        else
            _files -g '*.pattern.md'
        fi
    fi
}

if [[ ${funcstack[1]} == _patternforge ]]; then
    _patternforge "$@"
else
    compdef _patternforge patternforge
fi
