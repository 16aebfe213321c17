# Completions of patternforge for bash. What may come next is told by the program itself.

_patternforge_files() {
    local kind=$1 begun=${2//\\/} file
    while IFS= read -r file; do
        COMPREPLY+=("$file")
    done < <(
        compgen -d -- "$begun"
        [ "$kind" = :folders ] || compgen -f -X '!*.pattern.md' -- "$begun"
    )
    # Where no pattern fits, any file may be meant.
    if [ ${#COMPREPLY[@]} -eq 0 ]; then
        compopt -o default
    else
        compopt -o filenames
    fi 2> /dev/null
}

_patternforge() {
    local program=${1/#\~/$HOME} word=${COMP_WORDS[COMP_CWORD]} line="" i value
    COMPREPLY=()
    [ "$word" != "=" ] || word=""
    for ((i = 1; i < COMP_CWORD; i++)); do
        value=${COMP_WORDS[i]}
        [ "$value" != "${value//\\/}" ] && value="\"${value//\\/}\""
        [ "$value" = "=" ] || line+="$value "
    done

    while IFS=$'\t' read -r value _; do
        case $value in
            :patterns | :folders) _patternforge_files "$value" "$word" ;;
            *[[:space:]]*) COMPREPLY+=("$(printf %q "$value")") ;;
            *) COMPREPLY+=("$value") ;;
        esac
    done < <("$program" "[suggest]" "$line$word" 2> /dev/null)
}

complete -F _patternforge patternforge
