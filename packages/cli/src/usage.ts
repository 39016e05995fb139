import { formatMessageForArgumentScannerError, text_en, type ApplicationText, type ArgumentScannerError } from '@stricli/core';
import { say } from './sentences.ts';

const flagName = (name: string): string => (name.startsWith('-') ? name : `--${name}`);
const instead = (corrections: readonly string[]): string => (corrections.length === 0 ? '' : say('usage.instead', { corrections: corrections.join(', ') }));

/** What is said of arguments and in help, in the language that is spoken. */
export function usageText(): ApplicationText {
  return {
    ...text_en,
    headers: { usage: say('usage.usage'), aliases: say('usage.aliases'), commands: say('usage.commands'), flags: say('usage.flags'), arguments: say('usage.arguments') },
    keywords: { default: say('usage.default'), separator: say('usage.separator') },
    briefs: { help: say('usage.help'), helpAll: say('usage.help'), version: say('usage.version'), argumentEscapeSequence: say('usage.escape') },
    noCommandRegisteredForInput: ({ input, corrections }) => say('usage.no-command', { input }) + instead(corrections),
    exceptionWhileParsingArguments: (error) => (error instanceof Error ? formatMessageForArgumentScannerError(error as ArgumentScannerError, SAID) : String(error)),
  };
}

const SAID: Parameters<typeof formatMessageForArgumentScannerError>[1] = {
  FlagNotFoundError: ({ input, corrections }) => say('usage.no-flag', { flag: flagName(input) }) + instead(corrections.map(flagName)),
  AliasNotFoundError: ({ input }) => say('usage.no-flag', { flag: `-${input}` }),
  UnsatisfiedFlagError: ({ externalFlagName }) => say('usage.flag-empty', { flag: flagName(externalFlagName) }),
  UnexpectedFlagError: ({ externalFlagName }) => say('usage.flag-twice', { flag: flagName(externalFlagName) }),
  UnexpectedPositionalError: ({ input }) => say('usage.too-many', { input }),
  UnsatisfiedPositionalError: ({ placeholder }) => say('usage.missing', { placeholder }),
  InvalidNegatedFlagSyntaxError: ({ externalFlagName }) => say('usage.no-flag', { flag: flagName(externalFlagName) }),
};
