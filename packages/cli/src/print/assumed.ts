import type { Assumed } from '@washline/engine';
import { sayAssumed as sayIn } from '@washline/spec';
import { messages, named, say } from '../sentences.ts';
import { number } from './numbers.ts';

/** An assumption in plain words, in the language that is spoken. */
export const sayAssumed = (assumed: Pick<Assumed, 'key' | 'value' | 'unit' | 'low' | 'high'>): string => sayIn(assumed, { sentences: messages('assumed'), named, number, to: say('read.to') });
