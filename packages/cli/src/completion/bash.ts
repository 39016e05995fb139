import type { OfferedCommand, What } from './offered.ts';

/** Words one a line, so that names of files may hold blanks. */
const list = (words: readonly string[]): string => `$'${words.map((word) => word.replace(/['\\]/g, '\\$&')).join('\\n')}'`;

function reply(what: What): string {
  switch (what.kind) {
    case 'words': return `COMPREPLY=($(compgen -W ${list(what.words)} -- "$word"))`;
    case 'folder': return 'compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -d -- "$word"))';
    case 'files': return `compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -d -- "$word")${what.ending === '' ? ' $(compgen -f -- "$word")' : ` $(compgen -f -X '!*${what.ending}' -- "$word")`})`;
    default: return 'COMPREPLY=()';
  }
}

/** A script that bash sources: commands, their flags, and what stands behind each. */
export function bash(commands: readonly OfferedCommand[]): string {
  const cases = commands.map((command) => {
    const values = command.flags.flatMap((flag) => (flag.takes === null ? [] : [`      --${flag.name}) ${reply(flag.takes)}; return ;;`]));
    return [
      `    ${command.name})`,
      ...(values.length === 0 ? [] : ['      case "$before" in', ...values, '      esac']),
      '      case "$word" in',
      `        -*) COMPREPLY=($(compgen -W ${list(command.flags.map((flag) => `--${flag.name}`))} -- "$word")) ;;`,
      `        *) ${reply(command.takes)} ;;`,
      '      esac ;;',
    ].join('\n');
  });
  return `# bash completion of washline. Keep it with: washline completion bash > ~/.local/share/bash-completion/completions/washline
_washline() {
  local word="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" IFS=$'\\n'
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W ${list([...commands.map((command) => command.name), '--help', '--version'])} -- "$word"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${cases.join('\n')}
  esac
}
complete -F _washline washline
`;
}
