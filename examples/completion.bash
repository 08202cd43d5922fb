# SPDX-License-Identifier: MIT
# For bash: completes the programs' long options and what they are set to, as each program's own --help has them, and names of files.

# The long options of a program, with "=" where they are set to something.
_tunnelside_options() {
    "$1" --help 2> /dev/null | grep -oE -e '--[a-z-]+=?' | LC_ALL=C sort -ru | awk '{ name = $0; sub(/=$/, "", name) } !seen[name]++'
}

# _tunnelside_choices PROGRAM OPTION: what an option may be set to, where its help lists it: "--units=us|si", or in words, as of --format and --view.
_tunnelside_choices() {
    "$1" --help 2> /dev/null | awk -v option="$2" '
        match($0, /--[a-z-]+/) { name = substr($0, RSTART, RLENGTH); listed = name == option }
        listed && name == option {
            if (match($0, option "\\[?=[a-z0-9]+(\\|[a-z0-9]+)+")) {
                list = substr($0, RSTART + length(option) + 1, RLENGTH - length(option) - 1)
                gsub(/\|/, "\n", list)
                print list
                exit
            }
            words = $0
            gsub(/[^a-z_]+/, "\n", words)
            said = said "\n" words
        }
        END {
            known["--format"] = "text html csv json pdf svg png"
            known["--view"] = "end_wall whole_wall corner extender along roll_shut roll_open turns drive_card"
            count = split(known[option], choices, " ")
            for (i = 1; i <= count; i++)
                if (index(said "\n", "\n" choices[i] "\n"))
                    print choices[i]
        }'
}

_tunnelside() {
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}
    COMPREPLY=()
    # bash parts words at "=".
    test "$word" != = || { word=; before="$before="; }
    test "$before" != = || before="${COMP_WORDS[COMP_CWORD - 2]}="
    case $before in
    --*=)
        COMPREPLY=($(compgen -W "$(_tunnelside_choices "$1" "${before%=}")" -- "$word"))
        test ${#COMPREPLY[@]} -gt 0 || COMPREPLY=($(compgen -f -- "$word"))
        return
        ;;
    esac
    case $word in
    -*)
        COMPREPLY=($(compgen -W "$(_tunnelside_options "$1")" -- "$word"))
        test "${COMPREPLY[*]}" = "${COMPREPLY[*]%=}" || compopt -o nospace 2> /dev/null
        ;;
    *) COMPREPLY=($(compgen -f -- "$word")) ;;
    esac
}

complete -o filenames -F _tunnelside tunnelside-draw tunnelside-order tunnelside-plan tunnelside-turns
