import { buildApplication, buildCommand, buildRouteMap, type CommandContext, type RouteMap, type StricliProcess } from '@stricli/core';
import type { CompletionFlags } from './commands/completion.ts';
import type { HandsFlags } from './commands/hands.ts';
import type { LarderFlags } from './commands/larder.ts';
import type { LinesFlags } from './commands/lines.ts';
import type { OpenFlags } from './commands/open.ts';
import type { ReadFlags } from './commands/read.ts';
import type { VerifyFlags } from './commands/verify.ts';
import { say } from './sentences.ts';
import { usageText } from './usage.ts';
import type { World } from './world.ts';

/** What a command is run in; `status` is set by it. */
export interface Context extends CommandContext { readonly process: StricliProcess; readonly world: World; status: number | null }

const text = (value: string): string => value;
const flag = (name: string, placeholder: string) => ({ kind: 'parsed', parse: text, optional: true, brief: say(`flag.${name}`), placeholder } as const);
const shared = () => ({
  json: { kind: 'boolean', default: false, withNegated: false, brief: say('flag.json') },
  color: { kind: 'boolean', default: true, withNegated: true, brief: say('flag.color') },
  language: flag('language', 'LANGUAGE'),
} as const);
const reading = () => ({ ...shared(), variant: flag('variant', 'NAME'), why: { ...flag('why', 'FIGURE'), variadic: true }, bench: flag('bench', 'FILE'), later: { kind: 'boolean', default: false, withNegated: false, brief: say('flag.later') }, inHand: { kind: 'boolean', default: false, withNegated: false, brief: say('flag.inHand') } } as const);
const several = (placeholder: string, minimum: number) => ({ kind: 'array', minimum, parameter: { parse: text, brief: say(`argument.${placeholder}`), placeholder } } as const);
const docs = (command: string) => ({ brief: say(`command.${command}`) });

/** The commands; each is loaded when it is asked for. */
export function makeApplication(version: string) {
  const routes: RouteMap<Context> = buildRouteMap({
    routes: {
      read: buildCommand<ReadFlags, string[], Context>({
        docs: docs('read'), parameters: { flags: reading(), positional: several('SPEC', 1) },
        async func(flags, ...specs) { this.status = await (await import('./commands/read.ts')).read(this.world, flags, specs); },
      }),
      mix: buildCommand<ReadFlags, string[], Context>({
        docs: docs('mix'), parameters: { flags: reading(), positional: several('LINE', 1) },
        async func(flags, ...lines) { this.status = await (await import('./commands/mix.ts')).mix(this.world, flags, lines); },
      }),
      lines: buildCommand<LinesFlags, [string?], Context>({
        docs: docs('lines'), parameters: { flags: shared(), positional: { kind: 'tuple', parameters: [{ parse: text, optional: true, brief: say('argument.FILE'), placeholder: 'FILE' }] } },
        async func(flags, file) { this.status = await (await import('./commands/lines.ts')).lines(this.world, flags, file); },
      }),
      larder: buildCommand<LarderFlags, string[], Context>({
        docs: docs('larder'), parameters: { flags: { ...shared(), limes: flag('limes', 'G_PER_L'), lemons: flag('lemons', 'G_PER_L') }, positional: several('WORDS', 0) },
        async func(flags, ...words) { this.status = await (await import('./commands/larder.ts')).larder(this.world, flags, words); },
      }),
      verify: buildCommand<VerifyFlags, string[], Context>({
        docs: docs('verify'), parameters: { flags: { ...shared(), only: { kind: 'parsed', parse: text, optional: true, variadic: true, brief: say('flag.only'), placeholder: 'GROUP' } }, positional: several('CASES', 0) },
        async func(flags, ...files) { this.status = await (await import('./commands/verify.ts')).verify(this.world, flags, files); },
      }),
      hands: buildCommand<HandsFlags, [string], Context>({
        docs: docs('hands'), parameters: {
          flags: { ...shared(), variant: flag('variant', 'NAME'), bench: flag('bench', 'FILE'), makers: flag('makers', 'N'), seed: flag('seed', 'N'), profile: flag('profile', 'NAME'), threads: flag('threads', 'N') },
          positional: { kind: 'tuple', parameters: [{ parse: text, brief: say('argument.SPEC'), placeholder: 'SPEC' }] },
        },
        async func(flags, spec) { this.status = await (await import('./commands/hands.ts')).hands(this.world, flags, spec); },
      }),
      open: buildCommand<OpenFlags, [], Context>({
        docs: docs('open'), parameters: { flags: { ...shared(), port: flag('port', 'N'), book: flag('book', 'PATH'), share: { kind: 'boolean', default: false, withNegated: false, brief: say('flag.share') } } },
        async func(flags) { this.status = await (await import('./commands/open.ts')).open(this.world, flags); },
      }),
      completion: buildCommand<CompletionFlags, [string], Context>({
        docs: docs('completion'), parameters: { flags: shared(), positional: { kind: 'tuple', parameters: [{ parse: text, brief: say('argument.SHELL'), placeholder: 'SHELL' }] } },
        async func(flags, shell) { this.status = await (await import('./commands/completion.ts')).completion(this.world, flags, shell, routes); },
      }),
    },
    docs: { brief: say('washline') },
  });
  return buildApplication(routes, {
    name: 'washline', versionInfo: { currentVersion: version },
    localization: { text: usageText() },
    scanner: { caseStyle: 'allow-kebab-for-camel', allowArgumentEscapeSequence: true },
    documentation: { caseStyle: 'convert-camel-to-kebab', disableAnsiColor: true, alwaysShowHelpAllFlag: false },
  });
}
