# fish completion for ullage. To use it now:
#     ullage completion fish | source
# To keep it, write it to ~/.config/fish/completions/ullage.fish

function __ullage_complete
    set -l before (commandline -opc)
    set -l current (commandline -ct)
    for line in ($before[1] __complete $before[2..-1] "$current" 2>/dev/null)
        if test "$line" = :files
            __fish_complete_path "$current"
        else
            echo $line
        end
    end
end
complete -c ullage -f -a '(__ullage_complete)'
