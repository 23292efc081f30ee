#compdef ullage
# zsh completion for ullage. To use it now:
#     source <(ullage completion zsh)
# To keep it, write it to a file named _ullage in a directory of $fpath

_ullage() {
    local line candidate meaning
    local -a plain open
    for line in ${(f)"$(${words[1]} __complete "${(@)words[2,CURRENT]}" 2>/dev/null)"}; do
        candidate=${line%%$'\t'*}
        meaning=${line#*$'\t'}
        [[ -n $meaning ]] && meaning=:$meaning
        if [[ $candidate == :files ]]; then
            _files
        elif [[ $candidate == *= ]]; then
            open+=("${candidate//:/\\:}$meaning")
        else
            plain+=("${candidate//:/\\:}$meaning")
        fi
    done
    (($#plain)) && _describe ullage plain
    (($#open)) && _describe ullage open -S ''
    return 0
}
if [[ $funcstack[1] == _ullage ]]; then
    _ullage "$@"
else
    compdef _ullage ullage
fi
