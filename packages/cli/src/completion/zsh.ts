import type { OfferedCommand, What } from './offered.ts';

const inner = (text: string): string => text.replaceAll("'", "'\\''").replace(/[\\[\]:]/g, '\\$&');

function action(what: What): string {
  switch (what.kind) {
    case 'words': return `(${what.words.map((word) => word.replace(/[^\w.-]/g, '')).join(' ')})`;
    case 'folder': return '_files -/';
    case 'files': return what.ending === '' ? '_files' : `_files -g "*${what.ending}"`;
    default: return ' ';
  }
}

/** A script that zsh loads as a function: commands, their flags, and what stands behind each. */
export function zsh(commands: readonly OfferedCommand[]): string {
  const cases = commands.map((command) => {
    const flags = command.flags.map((flag) => `        '--${flag.name}[${inner(flag.brief)}]${flag.takes === null ? '' : `:${flag.name}:${action(flag.takes)}`}' \\`);
    return [`    ${command.name})`, '      _arguments -s \\', ...flags, `        '*:${command.name}:${action(command.takes)}' ;;`].join('\n');
  });
  return `#compdef washline
# zsh completion of washline. Keep it in a folder of $fpath: washline completion zsh > ~/.zfunc/_washline
_washline() {
  local -a commands
  commands=(
${commands.map((command) => `    '${inner(command.name)}:${inner(command.brief)}'`).join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe -t commands command commands
    return
  fi
  local chosen=$words[2]
  shift words
  (( CURRENT-- ))
  case $chosen in
${cases.join('\n')}
  esac
}
if [ "$funcstack[1]" = _washline ]; then _washline "$@"; else compdef _washline washline; fi
`;
}
