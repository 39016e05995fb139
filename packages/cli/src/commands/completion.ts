import type { CommandContext, RouteMap } from '@stricli/core';
import { bash } from '../completion/bash.ts';
import { fish } from '../completion/fish.ts';
import { offered } from '../completion/offered.ts';
import { zsh } from '../completion/zsh.ts';
import { printJson, refuse } from '../problems.ts';
import { say } from '../sentences.ts';
import { EXIT, type World } from '../world.ts';

export interface CompletionFlags { readonly json: boolean; readonly color: boolean }

const SHELLS: Readonly<Record<string, typeof bash>> = { bash, zsh, fish };

/** `washline completion SHELL`: a script for that shell, made from the commands as they are. */
export async function completion<C extends CommandContext>(world: World, flags: CompletionFlags, shell: string, commands: RouteMap<C>): Promise<number> {
  const print = SHELLS[shell];
  if (print === undefined) return refuse(world, flags.json, { code: 'asked-wrongly', message: say('completion.unknown', { shell }) });
  const { tables } = await import('@washline/tables');
  const script = print(offered(commands, tables.ids));
  if (flags.json) printJson(world, { shell, script }); else world.stdout.write(script);
  return EXIT.done;
}
