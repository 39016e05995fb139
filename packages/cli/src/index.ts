import { ExitCode, run } from '@stricli/core';
import { makeApplication, type Context } from './app.ts';
import { askedFor, ofMachine, speak } from './language.ts';
import { refuse } from './problems.ts';
import { say } from './sentences.ts';
import { VERSION } from './version.ts';
import { EXIT, type World } from './world.ts';

/** Runs one command line and gives its exit status. */
export async function main(args: readonly string[], world: World): Promise<number> {
  const asked = askedFor(args);
  speak(asked ?? ofMachine(world.env));
  if (asked === null) return refuse(world, args.includes('--json'), { code: 'asked-wrongly', message: say('language.unknown') });
  let said = '';
  const context: Context = {
    world, status: null,
    process: { stdout: { write: (text: string) => { world.stdout.write(text); } }, stderr: { write: (text: string) => { said += text; } }, env: {}, exitCode: null },
  };
  await run(makeApplication(VERSION), spread(args), context);
  if (context.status !== null) return context.status;
  const code = Number(context.process.exitCode ?? 0);
  if (code === 0) return EXIT.done;
  // Below the library's usage errors stand faults: of loading, of running.
  if (code !== ExitCode.UnknownCommand && code !== ExitCode.InvalidArgument) throw new Error(said.trim().split('\n')[0]?.replace(/^Command failed, (\w*Error: )?/, ''));
  return refuse(world, args.includes('--json'), { code: 'asked-wrongly', message: said.trim().replace(/\s*\n\s*/g, ' ') });
}

/** `--only a b c` holds up to the next option: said as one option each. */
function spread(args: readonly string[]): string[] {
  const out: string[] = [];
  let only = false;
  for (const [index, arg] of args.entries()) {
    if (arg === '--only' && !(args[index + 1] ?? '--').startsWith('--')) { only = true; continue; }
    if (arg.startsWith('--')) only = false;
    if (only) out.push('--only', arg); else out.push(arg);
  }
  return out;
}
