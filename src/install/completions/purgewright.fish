# Completion for fish: commands, options, templates, job files and folders, what `trace` can trace.
set -l commands new check design compare flow trace watch

function __purgewright_quantities
    # The job is the first word after the command that is not an option.
    set -l words (commandline -opc)[3..-1]
    set -l job (string match -v -- '-*' $words)[1]
    test -n "$job"; and purgewright check --json -- $job 2>/dev/null | string match -rg '^ *"id": "([^"]*)"'
end

function __purgewright_jobs
    __fish_complete_suffix .yaml | string match -r '^.*(?:\.ya?ml|/)(?:\t.*)?$'
end

complete -c purgewright -f
complete -c purgewright -s h -l help -d 'Print help and exit'
complete -c purgewright -n "not __fish_seen_subcommand_from $commands" -l version -d 'Print the version and exit'
complete -c purgewright -n "not __fish_seen_subcommand_from $commands" -a new -d 'Write a commented job file'
complete -c purgewright -n "not __fish_seen_subcommand_from $commands" -a check -d 'All numbers and rules, without files'
complete -c purgewright -n "not __fish_seen_subcommand_from $commands" -a design -d 'Parts, assembly, drawings, results'
complete -c purgewright -n "not __fish_seen_subcommand_from $commands" -a compare -d 'Designs side by side, or a sweep'
complete -c purgewright -n "not __fish_seen_subcommand_from $commands" -a flow -d 'The gas in three dimensions, for OpenFOAM'
complete -c purgewright -n "not __fish_seen_subcommand_from $commands" -a trace -d 'Where one number comes from, or what a rule judged'
complete -c purgewright -n "not __fish_seen_subcommand_from $commands" -a watch -d 'The report as a page, renewed at each save'

complete -c purgewright -n '__fish_seen_subcommand_from new' -a 'flat-cap domed-cap spigot-cap'
complete -c purgewright -n '__fish_seen_subcommand_from new' -l tube -x -d 'OUTSIDE x WALL x LENGTH'
complete -c purgewright -n '__fish_seen_subcommand_from new' -l cap -x -a 'flat domed spigot' -d 'Shape of the cap'
complete -c purgewright -n '__fish_seen_subcommand_from new' -s o -l output -r -F -d 'Job file to write'
complete -c purgewright -n '__fish_seen_subcommand_from check design compare flow trace watch' -k -a '(__purgewright_jobs)'
complete -c purgewright -n '__fish_seen_subcommand_from design' -s o -l output -x -a '(__fish_complete_directories)' -d 'Folder to write'
complete -c purgewright -n '__fish_seen_subcommand_from compare' -s o -l output -x -a '(__fish_complete_directories)' -d 'Folder for page, CSV and JSON'
complete -c purgewright -n '__fish_seen_subcommand_from compare' -l vary -x -d 'KEY=FROM:TO:STEP'
complete -c purgewright -n '__fish_seen_subcommand_from compare' -l show -x -d 'ID of a further quantity'
complete -c purgewright -n '__fish_seen_subcommand_from compare' -l rank -x -d 'ID of a quantity to choose by'
complete -c purgewright -n '__fish_seen_subcommand_from compare' -l shard -x -d 'Piece of the sweep, I/N'
complete -c purgewright -n '__fish_seen_subcommand_from compare' -l merge -d 'Put pieces together'
complete -c purgewright -n '__fish_seen_subcommand_from compare' -l quick -d 'Sweep in closed form, without purge, heat and log'
complete -c purgewright -n '__fish_seen_subcommand_from check design compare' -l json -d 'Print JSON'
complete -c purgewright -n '__fish_seen_subcommand_from check' -l all -d 'Reasons, parts, passes and defaults as well'
complete -c purgewright -n '__fish_seen_subcommand_from check design' -l solve -d 'Choose what the job leaves open'
complete -c purgewright -n '__fish_seen_subcommand_from check' -l strict -d 'No effect here'
complete -c purgewright -n '__fish_seen_subcommand_from design' -l strict -d 'Write nothing when a rule fails'
complete -c purgewright -n '__fish_seen_subcommand_from design' -l open -d 'Open the report in the browser'
complete -c purgewright -n '__fish_seen_subcommand_from watch' -l port -x -d 'Port of 127.0.0.1'
complete -c purgewright -n '__fish_seen_subcommand_from watch' -l open -d 'Open the page in the browser'
complete -c purgewright -n '__fish_seen_subcommand_from flow' -s o -l output -x -a '(__fish_complete_directories)' -d 'Folder of the case'
complete -c purgewright -n '__fish_seen_subcommand_from flow' -l stage -x -a 'bore bore-outlet-below prepurge open away torch' -d 'Stage of the gas'
complete -c purgewright -n '__fish_seen_subcommand_from flow' -l cells -x -d 'Cells in the gas of the fixture'
complete -c purgewright -n '__fish_seen_subcommand_from flow' -l duration -x -d 'How long the flow is followed'
complete -c purgewright -n '__fish_seen_subcommand_from flow' -l run -x -d 'Solve it on so many processes'
complete -c purgewright -n '__fish_seen_subcommand_from flow' -l read -d 'Print what was solved beside the network'
complete -c purgewright -n '__fish_seen_subcommand_from trace' -a '(__purgewright_quantities)'
