# Completions of patternforge for fish. What may come next is told by the program itself.

function __patternforge_next
    set -l words (commandline -opc)
    set -l word (commandline -ct)
    set -l program (string replace -r '^~' -- "$HOME" $words[1])
    set -l before
    for earlier in $words[2..-1]
        set before "$before\"$earlier\" "
    end

    for line in ($program '[suggest]' "$before$word" 2> /dev/null)
        switch $line
            case ':patterns' ':folders'
                # An option may stand before the name: `--out=folder`.
                set -l begun (string replace -r -- '^--[^=]*=' '' $word)
                set -l option (string sub -l (math (string length -- "$word") - (string length -- "$begun")) -- "$word")
                set -l files (complete -C "'' $begun" | string replace -r '\t.*' '')
                set -l wanted (string match -r -- '.*/$' $files)
                if test $line = ':patterns'
                    set -a wanted (string match -- '*.pattern.md' $files)
                    # Where no pattern fits, any file may be meant.
                    test (count $wanted) -gt 0; or set wanted $files
                end
                for file in $wanted
                    echo $option$file
                end
            case '*'
                echo $line
        end
    end
end

complete -c patternforge -f -a '(__patternforge_next)'
