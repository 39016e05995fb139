import type { OfferedCommand, What } from './offered.ts';

const quoted = (text: string): string => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;

function behind(what: What): string {
  switch (what.kind) {
    case 'words': return `-x -a ${quoted(what.words.join(' '))}`;
    case 'folder': return "-x -a '(__fish_complete_directories)'";
    case 'files': return what.ending === '' ? '-r -F' : `-x -a '(__fish_complete_suffix ${what.ending})'`;
    default: return '-x';
  }
}

/** A script that fish sources: commands, their flags, and what stands behind each. */
export function fish(commands: readonly OfferedCommand[]): string {
  const lines = ['# fish completion of washline. Keep it with: washline completion fish > ~/.config/fish/completions/washline.fish', 'complete -c washline -f'];
  for (const command of commands) {
    lines.push(`complete -c washline -n __fish_use_subcommand -a ${quoted(command.name)} -d ${quoted(command.brief)}`);
    const seen = `-n ${quoted(`__fish_seen_subcommand_from ${command.name}`)}`;
    if (command.takes.kind !== 'any') lines.push(`complete -c washline ${seen} ${behind(command.takes).replace(/^-x /, '')}`);
    for (const flag of command.flags) lines.push(`complete -c washline ${seen} -l ${flag.name}${flag.takes === null ? '' : ` ${behind(flag.takes)}`}${flag.brief === '' ? '' : ` -d ${quoted(flag.brief)}`}`);
  }
  return `${lines.join('\n')}\n`;
}
