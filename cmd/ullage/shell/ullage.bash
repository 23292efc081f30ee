# bash completion for ullage. To use it now:
#     source <(ullage completion bash)
# To keep it, write it to ~/.local/share/bash-completion/completions/ullage

_ullage() {
    # bash breaks words at "=", ullage does not: put them together again.
    local i words=() word current=${COMP_WORDS[COMP_CWORD]}
    for ((i = 1; i <= COMP_CWORD; i++)); do
        word=${COMP_WORDS[i]}
        if ((${#words[@]} > 0)) && [[ $word == = || (${COMP_WORDS[i - 1]} == = && $i -gt 1) ]]; then
            words[${#words[@]} - 1]+=$word
        else
            words+=("$word")
        fi
    done
    # What is already there of the last word, up to where bash broke it.
    [[ $current == = ]] && current=
    local last=${words[${#words[@]} - 1]}
    local before=${last%"$current"}

    COMPREPLY=()
    local candidate meaning
    while IFS=$'\t' read -r candidate meaning; do
        if [[ $candidate == :files ]]; then
            while IFS= read -r candidate; do
                COMPREPLY+=("$candidate")
            done < <(compgen -f -- "$current")
            compopt -o filenames 2>/dev/null
            continue
        fi
        [[ $candidate == *= ]] && compopt -o nospace 2>/dev/null
        COMPREPLY+=("${candidate#"$before"}")
    done < <("$1" __complete "${words[@]}" 2>/dev/null)
}
complete -F _ullage ullage
